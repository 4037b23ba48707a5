import { createResource, createSignal, For, onCleanup, Show, Suspense } from 'solid-js';
import type { ListState, SharedSheet } from '../../document/joined/shared-list.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { createKept } from '../kit/keep-equal.ts';
import { late } from '../kit/late.tsx';
import { addressOfSheet, go } from '../kit/router.ts';
import { DeletedHere } from './deleted-here.tsx';
import { endedWords } from './ended-words.ts';
import { keepKeyOfShop, keepShared, keyOfShop, sharedHere } from './keys.ts';
import { dropLine, lineOf } from './lines.ts';
import { followList } from './list-over.ts';
import { saidName } from './said-name.ts';
import { sharedByWords } from './shared-by.ts';
import { SharedOwn } from './shared-own.tsx';
import { sharingChanged } from './sharing.ts';

const KeyList = late('The list of links', () => import('./key-list.tsx'));

/** What the devices of the shop share, on each that has joined. */
export default function SharedSheets(props: { shop: Shop; onLeft: () => void }) {
  const [state, setState] = createSignal<ListState>();
  const [trouble, setTrouble] = createSignal<string>();
  const [keys, setKeys] = createSignal(false);
  let gone = false;
  const [key, { mutate: showKey }] = createResource(async () => {
    const key = await keyOfShop(props.shop);
    if (key === undefined) return undefined;
    const end = await followList(key, (now) => {
      if (!gone) setState(now);
    });
    if (gone) end();
    else onGone = end;
    return key;
  });
  let onGone = (): void => undefined;
  onCleanup(() => {
    gone = true;
    onGone();
  });
  const open = async ({ id, title }: SharedSheet) => {
    setTrouble(undefined);
    if (!props.shop.row(id)) {
      const { fetchSheet } = await import('../../document/joined/shared-list.ts');
      const came = await fetchSheet(await lineOf(key()!), id);
      if (typeof came === 'string') {
        setTrouble(`${saidName(title)}: ${endedWords(came)}`);
        return;
      }
      await props.shop.adopt(id, came);
    }
    if (props.shop.row(id)?.removed !== undefined) await props.shop.bringBack(id);
    // By the key of the shop from now on; what was chosen here for the sheet stays.
    const { key: _key, readOnly: _readOnly, ...chosen } = (await sharedHere(props.shop, id)) ?? {};
    await keepShared(props.shop, id, chosen);
    go(addressOfSheet(id));
  };
  const leave = async () => {
    dropLine(key()!);
    await keepKeyOfShop(props.shop, undefined);
    // Sheets of links of their own may still be here.
    onGone();
    onGone = () => undefined;
    showKey(undefined);
    sharingChanged();
    props.onLeft();
  };
  const words = () => {
    const now = state();
    if (now?.ended) return endedWords(now.ended);
    return now?.line === 'open'
      ? undefined
      : 'The server is not reached; it is tried again. What is here can be worked on.';
  };
  const [rows, noteRows] = createSignal(0);
  onCleanup(props.shop.observeList(() => noteRows((n) => n + 1)));
  const stands = (id: string) => {
    rows();
    const row = props.shop.row(id);
    if (!row) return 'Open it here too';
    return row.removed === undefined ? 'Open it' : 'Bring it back and open it';
  };
  const sheets = createKept<SharedSheet[]>(
    () => (state()?.sheets ?? []).filter(({ ended }) => !ended).map((one) => ({ ...one })),
    [],
  );
  return (
    <>
      <DeletedHere shop={props.shop} />
      <Show when={key()}>
        <section class="shared-sheets" aria-label="Shared in the shop">
          <h2 class="heading mb-3">Shared in the shop</h2>
          <Show when={words()}>{(text) => <p role="status">{text()}</p>}</Show>
          <Show when={trouble()}>
            {(text) => (
              <p class="trouble" role="alert">
                {text()}
              </p>
            )}
          </Show>
          <ul class="lined-t">
            <For
              each={sheets()}
              fallback={
                <Show when={state()?.line === 'open'}>
                  <li class="caption p-2 lined-b-rule">
                    No sheet yet: open one, and press “Share” and then “Share with the shop”.
                  </li>
                </Show>
              }
            >
              {(sheet) => (
                <li class="along justify-between gap-3 py-2 lined-b-rule">
                  <span class="wrap-anywhere">
                    <strong>
                      <bdi>{saidName(sheet.title) || 'without a title'}</bdi>
                    </strong>{' '}
                    <span class="caption">
                      {sheet.template ? 'a template, ' : ''}
                      {sharedByWords(sheet)}
                    </span>
                  </span>
                  <button
                    type="button"
                    onClick={() => void open(sheet).catch((error: unknown) => setTrouble(String(error)))}
                  >
                    {stands(sheet.id)}
                  </button>
                </li>
              )}
            </For>
          </ul>
          <SharedOwn shop={props.shop} equipment={state()?.equipment ?? []} />
          <Show when={keys() && key()}>
            {(by) => (
              <section class="mt-3 stacked gap-2" aria-label="Links and keys">
                <h3 class="text-figure">Who gets in</h3>
                <Suspense fallback={<p>Asking the server …</p>}>
                  <KeyList shop={props.shop} by={by()} />
                </Suspense>
              </section>
            )}
          </Show>
          <p class="buttons mt-2">
            <button type="button" aria-expanded={keys()} onClick={() => setKeys(!keys())}>
              {keys() ? 'Close the links' : 'Let another device in'}
            </button>
            <button type="button" class="plain" onClick={() => void leave()}>
              Leave the shop’s server
            </button>
          </p>
        </section>
      </Show>
    </>
  );
}
