import * as Y from 'yjs';
import { isObject } from '../../../shared/sheet/schema.ts';
import { emptyReplica, faultIn, type StoredFault } from '../../document/model/stored-fault.ts';
import { MAX_EQUIPMENT, sharedEquipmentIn } from '../../document/sharing/shared-equipment.ts';
import {
  EQUIPMENT_MAP,
  LIST_DOCUMENT,
  LIST_MAP,
  MAX_DEVICE_NAME,
  MAX_TITLE,
} from '../../document/sharing/wire.ts';

/** What a document may hold. */
export interface Judge {
  /** A document in which its types are there before anything comes. */
  empty(): Y.Doc;
  roots: ReadonlySet<string>;
  /** What a transaction put into it that it may not hold. */
  fault(doc: Y.Doc, transaction: Y.Transaction): StoredFault | undefined;
  /** What there is too much of once it is in: asked of what a page sends, for what another server has taken stands there. */
  excess?(doc: Y.Doc, transaction: Y.Transaction): StoredFault | undefined;
}

/** A new line is looked at by its fields; a list beside them would be stored and never seen. */
const hiddenIn = (doc: Y.Doc, { changed }: Y.Transaction): StoredFault | undefined => {
  const cells = doc.getMap('cells');
  for (const [type, keys] of changed)
    if ((type as unknown) === cells)
      for (const id of keys) {
        const cell = id === null ? undefined : cells.get(id);
        if (cell instanceof Y.Map && cell._start !== null) return { why: 'a list where none is', cell: id! };
      }
  return undefined;
};

const sheetJudge: Judge = {
  empty: emptyReplica,
  roots: new Set(['cells', 'sheet']),
  fault: (doc, transaction) => faultIn(doc, transaction) ?? hiddenIn(doc, transaction),
};

const isShared = (value: unknown): boolean => {
  if (!isObject(value)) return false;
  const { title, template, by, since, ended, ...more } = value;
  return (
    Object.keys(more).length === 0 &&
    typeof title === 'string' &&
    title.length <= MAX_TITLE &&
    typeof template === 'boolean' &&
    typeof by === 'string' &&
    by.length <= MAX_DEVICE_NAME &&
    Number.isFinite(since) &&
    (ended === undefined || typeof ended === 'boolean')
  );
};

const isListed: Readonly<Record<string, (value: unknown) => boolean>> = {
  [LIST_MAP]: isShared,
  [EQUIPMENT_MAP]: (value) => sharedEquipmentIn(value) !== undefined,
};

const listJudge: Judge = {
  empty: () => {
    const doc = new Y.Doc();
    for (const name of Object.keys(isListed)) doc.getMap(name);
    return doc;
  },
  roots: new Set(Object.keys(isListed)),
  fault: (doc, { changed }) => {
    for (const name of doc.share.keys()) if (!Object.hasOwn(isListed, name)) return { why: 'a foreign part' };
    const maps = Object.entries(isListed).map(([name, is]) => ({ map: doc.getMap(name), is }));
    for (const [type, keys] of changed) {
      const found = maps.find(({ map }) => map === (type as unknown));
      if (!found) return { why: 'a foreign part' };
      const { map, is } = found;
      for (const id of keys)
        if (id === null || !/^[\w-]{1,64}$/.test(id) || (map.has(id) && !is(map.get(id))))
          return { why: 'something on the list that is none' };
    }
    return undefined;
  },
  excess: (doc, { changed }) => {
    const map = doc.getMap(EQUIPMENT_MAP);
    const isMore = [...changed.keys()].some((type) => (type as unknown) === map);
    return isMore && map.size > MAX_EQUIPMENT ? { why: 'too much on the list' } : undefined;
  },
};

export const judgeOf = (document: string): Judge => (document === LIST_DOCUMENT ? listJudge : sheetJudge);

/** No document of a shop counts so far. Beyond, sums of Yjs would no longer be exact. */
const MAX_CLOCK = 2 ** 40;
const MAX_CLIENT = 2 ** 32 - 1;
/** Values nested deeper are no field of a sheet, and would exhaust the stack of whoever walks them. */
const DEEPEST = 24;
/** Writes to one place by as many who have not seen each other: more are made to be slow. */
const MAX_ALIKE = 200;

const isDeep = (value: unknown, left = DEEPEST): boolean =>
  typeof value === 'object' &&
  value !== null &&
  (left === 0 || Object.values(value).some((inner) => isDeep(inner, left - 1)));

type Struct = ReturnType<typeof Y.decodeUpdate>['structs'][number];

const contentFault = (content: Y.Item['content']): string | undefined => {
  if (content instanceof Y.ContentDeleted) return undefined;
  if (content instanceof Y.ContentAny) return isDeep(content.arr) ? 'a value nested too deep' : undefined;
  return content instanceof Y.ContentType && content.type.constructor === Y.Map
    ? undefined
    : 'a foreign type';
};

const refused = (why: string): { fault: StoredFault } => ({ fault: { why } });

/**
 * What an update says that no document of this kind says, looked at before it is applied to anything: foreign types and
 * contents, counts that lie, and what is made to be slow.
 */
export const updateFault = (
  update: Uint8Array,
  { roots }: Judge,
  maxItems: number,
): { fault: StoredFault } | { structs: readonly Struct[] } => {
  // Reads item by item, so that a number of items that lies finds no end of data and allots nothing.
  const { structs, ds } = Y.decodeUpdate(update);
  if (structs.length > maxItems) return refused('too many items');
  const alike = new Map<string, number>();
  for (const struct of structs) {
    const { client, clock } = struct.id;
    // Nothing of no length is ever written; Yjs cannot write it down again.
    if (struct.length < 1) return refused('an item of no length');
    if (client > MAX_CLIENT || clock + struct.length > MAX_CLOCK) return refused('a clock out of reach');
    if (!(struct instanceof Y.Item)) continue;
    const fault = contentFault(struct.content);
    if (fault !== undefined) return refused(fault);
    const { parent, origin } = struct as { parent: unknown; origin: Y.ID | null };
    if (typeof parent === 'string' && !roots.has(parent)) return refused('a foreign part');
    const place =
      origin === null
        ? `${parent instanceof Y.ID ? `${parent.client}-${parent.clock}` : String(parent)} ${struct.parentSub}`
        : `${origin.client} ${origin.clock}`;
    const count = (alike.get(place) ?? 0) + 1;
    if (count > MAX_ALIKE) return refused('too many writes to one place');
    alike.set(place, count);
  }
  for (const deletes of ds.clients.values()) {
    if (deletes.length > maxItems) return refused('too many deletions');
    // Each range goes over the items it covers: many over the same ones are made to be slow.
    let end = 0;
    for (const { clock, len } of [...deletes].sort((a, b) => a.clock - b.clock)) {
      if (len < 1 || clock < end || clock + len > MAX_CLOCK) return refused('deletions that overlap');
      end = clock + len;
    }
  }
  return { structs };
};

/**
 * What an update says of a client against what is known of it. Of an item that is known in part the library joins the rest to
 * what is there: where the two are not of one place, the document is no longer what is written of it. Pages send such items for
 * values that were overwritten one after the other, and for nothing else.
 */
export const joinFault = (doc: Y.Doc, structs: readonly Struct[]): string | undefined => {
  for (const struct of structs) {
    const { client, clock } = struct.id;
    const known = doc.store.clients.get(client) ?? [];
    const end = known.at(-1);
    const reached = end ? end.id.clock + end.length : 0;
    if (!(struct instanceof Y.Item) || clock >= reached || clock + struct.length <= reached) continue;
    const [first, ...more] = known.slice(Y.findIndexSS(known, clock));
    const isJoined =
      struct.content instanceof Y.ContentDeleted &&
      first instanceof Y.Item &&
      isSameStart(struct, first) &&
      more.every(
        (one) => one instanceof Y.Item && one.parent === first.parent && one.parentSub === first.parentSub,
      );
    if (!isJoined) return 'an item that contradicts what is known of it';
  }
  return undefined;
};

const isSameStart = ({ id, origin, parent, parentSub }: Y.Item, known: Y.Item): boolean => {
  const before = known.id.clock === id.clock ? known.origin : Y.createID(id.client, id.clock - 1);
  if (origin !== null || before !== null) return Y.compareIDs(origin, before);
  // What has nothing before it names its place.
  const { _item, doc } = known.parent as Y.AbstractType<unknown>;
  const isParent =
    (parent as unknown) instanceof Y.ID
      ? _item !== null && Y.compareIDs(parent as unknown as Y.ID, _item.id)
      : _item === null && doc?.share.get(String(parent)) === known.parent;
  return isParent && parentSub === known.parentSub;
};

/** Clients of which an update has something new, and as which its sender may not write. */
export const foreignIn = (
  doc: Y.Doc,
  structs: readonly Struct[],
  isForeign: (client: number) => boolean,
): ReadonlySet<number> => {
  const found = new Set<number>();
  for (const { id, length } of structs) {
    const end = doc.store.clients.get(id.client)?.at(-1);
    const reached = end ? end.id.clock + end.length : 0;
    if (id.clock + length > reached && isForeign(id.client)) found.add(id.client);
  }
  return found;
};

/**
 * The update without the items of some clients, and without deletions: what was to stand in place of a value must not take it
 * away and be missing. Whoever sent it has them all, and is asked for them again.
 */
export const withoutForeign = (update: Uint8Array, clients: ReadonlySet<number>): Uint8Array => {
  if (clients.size === 0) return update;
  const beyond = new Map([...clients].map((client) => [client, MAX_CLOCK]));
  const own = Y.diffUpdate(update, Y.encodeStateVector(beyond));
  // The deletions stand last, written as in a snapshot, which ends in a state vector: of nothing, one byte.
  const snapshot = Y.createSnapshot(Y.decodeUpdate(own).ds, new Map());
  const items = own.subarray(0, own.length - (Y.encodeSnapshot(snapshot).length - 1));
  return new Uint8Array([...items, 0]);
};
