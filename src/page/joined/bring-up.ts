import { JoinedSheet, type JoinedState } from '../../document/joined/joined-sheet.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { CameKeeper } from './came.ts';
import { deviceName, keyOfShop, type SharedHere, sharedHere } from './keys.ts';
import { holdSheet, isHeld, lineOf } from './lines.ts';

/** Done with: all of it is at the server, or it never will be without somebody who looks at it. */
const isOver = ({ atServer, line, readOnly }: JoinedState): boolean =>
  atServer || line === 'ended' || (readOnly && line === 'open');

const bringUpOne = async (shop: Shop, id: string, { key: own, numbers = [] }: SharedHere): Promise<void> => {
  const key = own ?? (await keyOfShop(shop));
  // Of one that was deleted here it is told what comes.
  if (key === undefined || shop.row(id)?.removed !== undefined || !shop.row(id)) return;
  const line = await lineOf(key);
  const opened = await shop.open(id);
  if (!('document' in opened)) return;
  if (isHeld(id)) {
    await opened.close();
    return;
  }
  const joined = new JoinedSheet(line, opened.document, (update) => opened.receive(update));
  // From which device what comes, and from which it goes there.
  const came = new CameKeeper(shop, id);
  joined.others.observe((others) => void came.meet(others));
  joined.onCame((what) => void came.note(what));
  joined.tell({ device: deviceName(), edited: numbers });
  await new Promise<void>((done) => {
    const giveBack = holdSheet(id, () => {
      joined.close();
      done();
    });
    const look = (now: JoinedState) => {
      if (!isOver(now)) return;
      giveBack();
      done();
    };
    joined.state.observe(look);
    look(joined.state.get());
  });
  came.close();
  joined.close();
  await opened.close();
};

/**
 * Brings shared sheets to the server, and what is new there to this device, though nobody opens them: what was entered
 * where there was no network may be of a sheet that nobody looks at again. One after the other; out of reach, it waits.
 */
export const bringUp = async (shop: Shop, ids: readonly string[]): Promise<void> => {
  for (const id of ids) {
    const shared = await sharedHere(shop, id);
    if (shared && !shared.readOnly) await bringUpOne(shop, id, shared);
  }
};
