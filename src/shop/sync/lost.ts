import * as Y from 'yjs';
import { sameValue } from '../../document/model/fields.ts';
import { fieldOfKey, listsIn, listText } from '../../document/model/readings.ts';
import { GONE, ORDER } from '../../document/model/replica.ts';
import type { LostValue } from '../store/store.ts';

const nameOf = ({ id }: Y.Item): string => `${id.client}-${id.clock}`;

/** Whoever writes a key names the item that stood there when they did. */
const hasSeen = (by: Y.Item, { id, length }: Y.Item): boolean =>
  by.origin !== null && by.origin.client === id.client && by.origin.clock === id.clock + length - 1;

/** The value an item holds; undefined for one that holds none any more. */
const held = ({ content }: Y.Item): { value: unknown } | undefined =>
  content instanceof Y.ContentAny ? { value: content.arr.at(-1) } : undefined;

/** The items a transaction brought. */
function* brought(doc: Y.Doc, { beforeState, afterState }: Y.Transaction): Generator<Y.Item> {
  for (const [client, clock] of afterState) {
    const from = beforeState.get(client) ?? 0;
    if (clock === from) continue;
    const structs = doc.store.clients.get(client) ?? [];
    for (let at = Y.findIndexSS(structs, from); at < structs.length; at += 1) {
      const struct = structs[at];
      if (struct instanceof Y.Item) yield struct;
    }
  }
}

const placeOf = (doc: Y.Doc, { parent, parentSub }: Y.Item): { cell?: string; key: string } | undefined => {
  if (parentSub === null || !(parent instanceof Y.Map)) return undefined;
  const [cells, sheet] = [doc.getMap('cells'), doc.getMap('sheet')];
  if (parent === sheet) return parentSub.startsWith('#') ? undefined : { key: parentSub };
  const cell = parent._item?.parent === (cells as unknown) ? parent._item?.parentSub : undefined;
  return typeof cell === 'string' && parentSub !== ORDER && parentSub !== GONE
    ? { cell, key: parentSub }
    : undefined;
};

/**
 * Values of a sheet that were written by two who had not seen each other, of which one remains: looked for when a transaction
 * is done and before what it deleted is forgotten. Whichever of the two came first to this server.
 */
export const lostIn = (doc: Y.Doc, transaction: Y.Transaction): LostValue[] => {
  const found: LostValue[] = [];
  const note = (item: Y.Item, lost: unknown) => {
    const place = placeOf(doc, item);
    if (!place) return;
    const kept = (item.parent as Y.Map<unknown>).get(place.key);
    if (!sameValue(lost, kept))
      found.push({
        ...place,
        place: `${place.cell ?? ''} ${place.key} ${item.id.client}`,
        item: nameOf(item),
        lost,
        kept,
      });
  };
  const isNew = ({ id }: Y.Item) => id.clock >= (transaction.beforeState.get(id.client) ?? 0);
  const lists = new Map<Y.Map<unknown>, Set<string>>();
  for (const item of brought(doc, transaction)) {
    if (item.parentSub === null) continue;
    const { left, right } = item;
    // It took the place of one that its writer had not seen.
    if (left && !isNew(left) && !hasSeen(item, left)) {
      const was = held(left);
      if (was && left.deleted) note(left, was.value);
    }
    // It came behind one that stands, and was gone at once.
    if (item.deleted && right && !hasSeen(right, item)) {
      const was = held(item);
      if (was) note(item, was.value);
    }
    const place = placeOf(doc, item);
    if (place?.cell !== undefined && !item.deleted) {
      const map = item.parent as Y.Map<unknown>;
      lists.set(map, (lists.get(map) ?? new Set()).add(fieldOfKey(place.key)));
    }
  }
  for (const [map, paths] of lists) found.push(...readingsUnder(doc, map, paths));
  return found;
};

/** Readings that were added to a list while another put a text in its place: they stand nowhere. */
const readingsUnder = (doc: Y.Doc, map: Y.Map<unknown>, paths: ReadonlySet<string>): LostValue[] => {
  const texts = [...paths].filter((path) => typeof map.get(path) === 'string');
  if (texts.length === 0) return [];
  const lists = listsIn(map.entries());
  return texts.flatMap((path) => {
    const elements = lists.get(path);
    const item = map._map.get(path);
    const place = item && placeOf(doc, item);
    if (!elements || !place) return [];
    return [
      {
        ...place,
        place: `${place.cell ?? ''} ${path}`,
        item: `${nameOf(item)} ${elements.map(([id]) => id).join(' ')}`,
        lost: listText(elements, undefined),
        kept: map.get(path),
      },
    ];
  });
};
