import { createResource, createSignal, Show, Suspense } from 'solid-js';
import { MAX_TITLE } from '../../document/sharing/wire.ts';
import { late } from '../kit/late.tsx';
import { useSheet } from '../state/context.ts';
import { useTools } from '../state/tools.ts';
import { deviceName, keepShared, keyOfShop, sharedHere } from './keys.ts';
import { putOnList } from './put-on-list.ts';
import { sharing, sharingChanged } from './sharing.ts';

const KeyList = late('The list of links', () => import('./key-list.tsx'));

/** Shares the sheet with every device that has joined the shop's server, or ends it. */
export const ShareWithShop = () => {
  const { sheet } = useSheet();
  const { shop, sheetId } = useTools();
  const [told, setTold] = createSignal('');
  const [keys, setKeys] = createSignal(false);
  const [now] = createResource(sharing, async () => {
    const [key, shared] = await Promise.all([keyOfShop(shop), sharedHere(shop, sheetId)]);
    return { key, shared };
  });
  const put = async (key: string, ended: boolean) => {
    const isStored = await putOnList(
      key,
      (list) =>
        list.put(sheetId, {
          title: sheet.state.title.title.slice(0, MAX_TITLE),
          template: sheet.document.template(),
          by: deviceName(),
          since: Date.now(),
          ...(ended && { ended }),
        }),
      setTold,
    );
    if (!isStored) return;
    const { key: _key, readOnly: _readOnly, off: _off, ...chosen } = (await sharedHere(shop, sheetId)) ?? {};
    await keepShared(shop, sheetId, ended ? undefined : chosen);
    sharingChanged();
    setTold(
      ended
        ? 'Shared no longer: nobody is let in to it, and every device keeps what it has.'
        : 'Shared with the shop.',
    );
  };
  const press = (ended: boolean) => {
    const key = now.latest?.key;
    if (key !== undefined)
      void put(key, ended).catch((error: unknown) => setTold(`It was not done: ${String(error)}`));
  };
  return (
    // Only a page that came from the shop's own server has somewhere to share to.
    <Show when={now.latest?.key || now.latest?.shared}>
      <section class="share-part">
        <h3 class="text-figure">With the devices of the shop, as it goes on</h3>
        <Show
          when={now.latest?.key}
          fallback={<p class="caption">This sheet is shared with you by a link of its own.</p>}
        >
          <Show
            when={now.latest?.shared && !now.latest.shared.off}
            fallback={
              <button type="button" onClick={() => press(false)}>
                Share with the shop
              </button>
            }
          >
            <p>This sheet is shared: every device that has joined sees it and can change it.</p>
            <div class="buttons">
              <button type="button" aria-expanded={keys()} onClick={() => setKeys(!keys())}>
                Give this sheet alone to somebody
              </button>
              <button type="button" onClick={() => press(true)}>
                Share it no longer
              </button>
            </div>
            <Show when={keys() && now.latest?.key}>
              {(by) => (
                <Suspense fallback={<p>Asking the server …</p>}>
                  <KeyList shop={shop} by={by()} sheet={sheetId} />
                </Suspense>
              )}
            </Show>
          </Show>
        </Show>
        <p role="status" class="empty:hidden">
          {told()}
        </p>
      </section>
    </Show>
  );
};
