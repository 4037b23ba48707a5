import type * as Y from 'yjs';
import { sameValue } from './fields.ts';
import { fieldOfKey, listsIn, listText } from './readings.ts';
import { GONE, ORDER, type Replica } from './replica.ts';

/**
 * A field that this tab wrote, and that somebody who had not seen it wrote too: one value remains. Values as stored; of a
 * list of readings the key is that of one of them.
 */
export interface Overwritten {
  /** Id of the cell; absent for a field of the sheet itself. */
  cell: string | undefined;
  key: string;
  /** What does not stand: of this tab, unless it is said to be `another`'s. */
  mine: unknown;
  /** What stands. */
  theirs: unknown;
  another?: true;
}

const contentOf = (item: Y.Item): unknown => item.content.getContent().at(-1);

/**
 * The item that stood under a key before the transaction, and the first that the transaction put behind it; none where
 * what stood there still stands.
 */
const replaced = (
  now: Y.Item | undefined,
  transaction: Y.Transaction,
): { before: Y.Item; by: Y.Item } | undefined => {
  let by = now;
  if (!by || !isOf(by, transaction)) return undefined;
  while (by.left && isOf(by.left, transaction)) by = by.left;
  return by.left ? { before: by.left, by } : undefined;
};

const isOf = ({ id }: Y.Item, { beforeState }: Y.Transaction): boolean =>
  id.clock >= (beforeState.get(id.client) ?? 0);

/** Whoever writes a key names the item that stood there when they did. */
const hasSeen = (by: Y.Item, { id, length }: Y.Item): boolean =>
  by.origin !== null && by.origin.client === id.client && by.origin.clock === id.clock + length - 1;

/**
 * Calls `emit` with what this tab wrote and another, not knowing of it, overwrote. Of two who write one field at once
 * every copy keeps the same one; the other would go unmentioned.
 */
export const watchOverwritten = (replica: Replica, emit: (found: Overwritten[]) => void): void => {
  const look = (
    map: Y.Map<unknown>,
    keys: Iterable<string>,
    cell: string | undefined,
    transaction: Y.Transaction,
  ) => {
    const found: Overwritten[] = [];
    for (const key of keys) {
      if (key === ORDER || key === GONE) continue;
      const items = replaced(map._map.get(key), transaction);
      if (!items || items.before.id.client !== replica.doc.clientID || hasSeen(items.by, items.before))
        continue;
      const [mine, theirs] = [contentOf(items.before), map.get(key)];
      if (!sameValue(mine, theirs)) found.push({ cell, key, mine, theirs });
    }
    return found;
  };
  /** Readings that somebody added to a list while another put a text in its place: they stand nowhere. */
  const lookUnder = (
    map: Y.Map<unknown>,
    keys: Iterable<string>,
    cell: string,
    transaction: Y.Transaction,
  ): Overwritten[] => {
    const paths = new Set([...keys].map(fieldOfKey).filter((path) => typeof map.get(path) === 'string'));
    if (paths.size === 0) return [];
    const lists = listsIn(map.entries());
    return [...paths].flatMap((path) => {
      const elements = lists.get(path);
      const text = map._map.get(path);
      if (!elements || !text) return [];
      const mine = elements.some(([id]) => {
        const item = map._map.get(`${path}#${id}`);
        return item && !isOf(item, transaction);
      });
      // Both have come by this transaction: neither was written here.
      if (!mine && isOf(text, transaction)) return [];
      return [
        {
          cell,
          key: path,
          mine: listText(elements, undefined),
          theirs: map.get(path),
          ...(!mine && { another: true as const }),
        },
      ];
    });
  };
  replica.cells.observeDeep((events, transaction) => {
    if (transaction.local) return;
    const found = events.flatMap((event) => {
      const [cell] = event.path;
      if (cell === undefined) return [];
      const map = event.target as Y.Map<unknown>;
      const changed = [...event.changes.keys.keys()];
      return [
        ...look(map, changed, String(cell), transaction),
        ...lookUnder(map, changed, String(cell), transaction),
      ];
    });
    if (found.length > 0) emit(found);
  });
  replica.sheet.observe((event, transaction) => {
    if (transaction.local) return;
    const found = look(replica.sheet, event.changes.keys.keys(), undefined, transaction);
    if (found.length > 0) emit(found);
  });
};
