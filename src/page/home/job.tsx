import { createSignal, Show } from 'solid-js';
import type { ListRow } from '../../document/storage/row.ts';
import type { StorageState } from '../../document/storage/state.ts';
import { addressOfSheet } from '../kit/router.ts';
import { say } from '../kit/words.ts';
import type { Notices } from '../state/notices.ts';
import type { ShopState } from '../state/shop.ts';
import { JobChecks } from './job-checks.tsx';
import { startFromTemplate } from './start.ts';

const when = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** One sheet of the list, and what can be done with it. */
export const Job = (props: { row: ListRow; shop: ShopState; notices: Notices }) => {
  const { shop } = props.shop;
  const [sure, setSure] = createSignal(false);
  const title = () => say(props.row.title.title) || 'without a title';
  const what = () =>
    [props.row.title.part, props.row.title.machine, props.row.title.customer]
      .flatMap((text) => (text ? say(text) : []))
      .join(' · ');
  /** Says what was done once it is on the disk, or why it is not. */
  const does = async (work: Promise<StorageState>, text: string, undo: () => Promise<StorageState>) => {
    const { message } = await work;
    props.notices.say(message ?? text, message ? undefined : { label: 'Undo', run: () => void undo() });
  };
  const remove = () => {
    const { id } = props.row;
    void does(shop.remove(id), `Deleted: ${title()}.`, () => shop.bringBack(id));
  };
  const archive = () => {
    const { id, archived } = props.row;
    void does(
      shop.archive(id, !archived),
      `${archived ? 'Taken out of the archive' : 'Archived'}: ${title()}.`,
      () => shop.archive(id, archived),
    );
  };
  const duplicate = async () => {
    const copy = await shop.duplicate(props.row.id);
    if (typeof copy !== 'string') {
      props.notices.say(copy.message);
      return;
    }
    props.notices.say(`Copied: ${title()}.`, { label: 'Undo', run: () => void shop.discard(copy) });
  };
  const begin = async () => {
    const file = await shop.file(props.row.id);
    if (!('cells' in file)) {
      props.notices.say(file.message);
      return;
    }
    await startFromTemplate(file).catch((error: unknown) => props.notices.say(String(error)));
  };
  return (
    <li class="job grid grid-cols-[minmax(0,2fr)_minmax(0,1.5fr)_6.5rem_10rem_16rem] gap-x-3 gap-y-2 items-center p-2 lined-b-rule [content-visibility:auto] [contain-intrinsic-size:auto_3.5rem] column:(grid-cols-1 gap-1)">
      <a
        class="flex items-center min-h-target text-figure font-bold wrap-anywhere"
        href={addressOfSheet(props.row.id)}
      >
        <bdi>{title()}</bdi>
      </a>
      <span>{what()}</span>
      <span class="caption">{when.format(props.row.changed)}</span>
      <JobChecks row={props.row} />
      <fieldset class="buttons gap-1 justify-end column:justify-start">
        <legend class="unseen">{title()}</legend>
        <Show
          when={props.row.removed === undefined}
          fallback={
            <>
              <button type="button" onClick={() => void shop.bringBack(props.row.id)}>
                Bring back
              </button>
              <button
                type="button"
                onBlur={() => setSure(false)}
                onClick={() => (sure() ? void shop.discard(props.row.id) : setSure(true))}
              >
                {sure() ? 'Really delete, with its history' : 'Delete for good'}
              </button>
            </>
          }
        >
          <Show when={props.row.template}>
            <button type="button" onClick={() => void begin()}>
              Begin a job
            </button>
          </Show>
          <button type="button" onClick={() => void duplicate()}>
            Copy
          </button>
          <button type="button" onClick={archive}>
            {props.row.archived ? 'Take out of the archive' : 'Archive'}
          </button>
          <button type="button" onClick={remove}>
            Delete
          </button>
        </Show>
      </fieldset>
    </li>
  );
};
