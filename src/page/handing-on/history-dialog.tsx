import { createResource, createSignal, For, Show, Suspense } from 'solid-js';
import { shortFingerprint } from '../../../shared/sheet/fingerprint.ts';
import type { OpenSheet } from '../../document/storage/open-sheet.ts';
import type { Shop } from '../../document/storage/shop.ts';
import type { Revision } from '../../document/storage/vault.ts';
import { CameList } from '../joined/came-list.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { late } from '../kit/late.tsx';
import { useSheet } from '../state/context.ts';
import { Changes } from './changes.tsx';
import { fileOf } from './file-of.ts';

const LookBack = late('The look back', () => import('./look-back.tsx'));
const when = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** The states of the sheet that were kept: what changed, a look back, and the way back. */
export default function HistoryDialog(props: { opened: OpenSheet; shop: Shop; onClose: () => void }) {
  const { sheet, notices } = useSheet();
  const [revisions, { refetch }] = createResource(() => props.shop.revisions(props.opened.id), {
    initialValue: [],
  });
  const [looked, setLooked] = createSignal<Revision>();
  const [label, setLabel] = createSignal('');
  const [trouble, setTrouble] = createSignal('');
  /** Latest first, each with the one before it. */
  const entries = () =>
    revisions.latest.map((revision, k, all) => ({ revision, before: all[k - 1] })).reverse();

  const keep = async (words: string): Promise<boolean> => {
    const kept = await props.shop.revise(props.opened.id, words);
    setTrouble('message' in kept ? (kept.message ?? '') : '');
    return 'n' in kept;
  };
  const goBack = async (revision: Revision) => {
    const file = fileOf(revision);
    if (!file) {
      setTrouble('This state cannot be read any more; it stays where it is.');
      return;
    }
    // What stands now must not be lost by going back.
    if (!(await keep('before going back'))) return;
    sheet.document.become(file, `return to the state of ${when.format(revision.time)}`);
    notices.say(`The sheet says what it said on ${when.format(revision.time)}.`, {
      label: 'Undo',
      run: () => sheet.document.undo(),
    });
    props.onClose();
  };

  return (
    <Dialog
      title="History of this sheet"
      class="history w-[min(60rem,calc(100vw-2*var(--s2)))]"
      onClose={props.onClose}
    >
      <Show
        when={!looked()}
        fallback={
          <>
            <div class="buttons">
              <button type="button" onClick={() => setLooked(undefined)}>
                Back to the history
              </button>
              <button type="button" onClick={() => void goBack(looked()!)}>
                Return the sheet to this state
              </button>
            </div>
            <Suspense fallback={<p>Working it out …</p>}>
              <LookBack revision={looked()!} when={when.format(looked()!.time)} />
            </Suspense>
          </>
        }
      >
        <form
          class="keep-state buttons items-end"
          onSubmit={(event) => {
            event.preventDefault();
            void keep(label().trim() || 'kept by hand').then(() => {
              setLabel('');
              void refetch();
            });
          }}
        >
          <div class="field flex-[1_1_16rem]">
            <label for="keep-state" class="caption">
              Keep the sheet as it stands, under these words
            </label>
            <input
              id="keep-state"
              value={label()}
              placeholder="before boring"
              autocomplete="off"
              onInput={(event) => setLabel(event.currentTarget.value)}
            />
          </div>
          <button type="submit">Keep</button>
        </form>
        <p role="alert" class="empty:hidden">
          {trouble()}
        </p>
        <CameList shop={props.shop} id={props.opened.id} />
        <ol class="revisions">
          <For
            each={entries()}
            fallback={
              <li class="caption py-2 lined-t-rule">
                {revisions.loading ? 'Reading …' : 'No earlier state has been kept yet.'}
              </li>
            }
          >
            {({ revision, before }) => (
              <li class="grid gap-1 justify-items-start py-2 lined-t-rule">
                <p>
                  <strong>{when.format(revision.time)}</strong> {revision.label}{' '}
                  <span class="caption">check letters {shortFingerprint(revision.fingerprint)}</span>
                </p>
                <Changes revision={revision} before={before} />
                <div class="buttons">
                  <button type="button" onClick={() => setLooked(revision)}>
                    Look at it
                  </button>
                  <button type="button" onClick={() => void goBack(revision)}>
                    Return to it
                  </button>
                </div>
              </li>
            )}
          </For>
        </ol>
      </Show>
    </Dialog>
  );
}
