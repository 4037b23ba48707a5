import { createSignal, For, onCleanup, onMount } from 'solid-js';
import { JoinedSheet } from '../../document/joined/joined-sheet.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { CameKeeper } from './came.ts';
import { idsShared, keepShared, keyOfShop, sharedHere } from './keys.ts';
import { holdSheet, lineOf } from './lines.ts';
import { saidName } from './said-name.ts';

/** A sheet that was deleted here, and who has gone on with it since. */
interface Written {
  id: string;
  title: string;
  devices: readonly string[];
}

/**
 * Sheets that were deleted on this device while another goes on with them: nothing of them is lost, for the server and the
 * others keep them; whether this device keeps them too is asked.
 */
export const DeletedHere = (props: { shop: Shop }) => {
  const [written, setWritten] = createSignal<readonly Written[]>([]);
  const watched = new Map<string, () => void>();
  let gone = false;
  const { shop } = props;

  const note = (id: string, devices: readonly string[]) => {
    const title = saidName(shop.row(id)?.title.title ?? '') || 'A sheet without a title';
    setWritten((all) => {
      const before = all.find((one) => one.id === id)?.devices ?? [];
      const one = { id, title, devices: [...new Set([...before, ...devices])] };
      return [...all.filter((other) => other.id !== id), one];
    });
  };
  const forget = (id: string) => {
    watched.get(id)?.();
    watched.delete(id);
    setWritten((all) => all.filter((one) => one.id !== id));
  };

  const watch = async (id: string): Promise<void> => {
    let over = false;
    let end = () => {
      over = true;
    };
    watched.set(id, () => end());
    const shared = await sharedHere(shop, id);
    const key = shared?.key ?? (await keyOfShop(shop));
    if (!shared || key === undefined || shared.left === shop.row(id)?.removed) return;
    const [line, opened] = [await lineOf(key), await shop.open(id)];
    if (!('document' in opened)) return;
    if (over) {
      await opened.close();
      return;
    }
    const one = new JoinedSheet(line, opened.document, (update) => opened.receive(update));
    const came = new CameKeeper(shop, id);
    const names = new Map<number, string>();
    one.others.observe((others) => {
      for (const { device, edits, edited = [] } of others)
        for (const number of edits === undefined ? edited : [edits, ...edited]) names.set(number, device);
      void came.meet(others);
    });
    one.onCame((what) => {
      if (what.cells.length === 0) return;
      void came.note(what);
      note(
        id,
        what.clients.flatMap((client) => names.get(client) ?? []),
      );
    });
    end = () => {
      giveBack();
      came.close();
      one.close();
      void opened.close();
    };
    const giveBack = holdSheet(id, () => {
      watched.delete(id);
      end();
    });
  };

  const look = async (): Promise<void> => {
    for (const id of [...watched.keys()]) if (shop.row(id)?.removed === undefined) forget(id);
    for (const id of await idsShared(shop))
      if (!gone && shop.row(id)?.removed !== undefined && !watched.has(id))
        await watch(id).catch(() => watched.delete(id));
  };
  onMount(() => void look());
  onCleanup(shop.observeList(() => void look()));
  onCleanup(() => {
    gone = true;
    for (const end of watched.values()) end();
  });

  const leave = async (id: string) => {
    forget(id);
    const [shared, removed] = [await sharedHere(shop, id), shop.row(id)?.removed];
    if (shared && removed !== undefined) await keepShared(shop, id, { ...shared, left: removed });
  };
  return (
    <For each={written()}>
      {({ id, title, devices }) => (
        <div class="trouble" role="alert">
          <p>
            “{title}” was deleted on this device, and{' '}
            {devices.length > 0 ? devices.map(saidName).join(' and ') : 'another device'} has gone on with it.
            The shop’s server and the other devices keep it. Is it to stay here too?
          </p>
          <div class="buttons">
            <button type="button" onClick={() => void shop.bringBack(id)}>
              Keep it here too
            </button>
            <button type="button" onClick={() => void leave(id)}>
              Leave it deleted here
            </button>
          </div>
        </div>
      )}
    </For>
  );
};
