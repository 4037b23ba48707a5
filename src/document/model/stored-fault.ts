import * as Y from 'yjs';
import { CELL_FIELDS } from '../../../shared/sheet/cell-fields.ts';
import { isField, isNamed, isReserved, type Part, partAt } from '../../../shared/sheet/field.ts';
import { faultsOf, type Schema } from '../../../shared/sheet/schema.ts';
import { SHEET_FIELDS } from '../../../shared/sheet/sheet-fields.ts';
import { sheetSchema } from '../../../shared/sheet/sheet-schema.ts';
import { isPlain } from './fields.ts';
import { elementIn, fieldOfKey, isElementKey, isHead } from './readings.ts';
import { GONE, ORDER } from './replica.ts';

/** Longest text of a field, and greatest size of a record, characters. */
const LONGEST = 200_000;
const MAX_KEY = 300;

const unescaped = (key: string) =>
  key.replace(/%([0-9a-f]{2})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)));

/** What the format has at a stored key; undefined where it knows none, which files may hold too. */
const partAtKey = (of: Part, key: string): Part | undefined =>
  key.split('.').map(unescaped).reduce<Part | undefined>(partAt, of);

const isSound = (value: unknown, of: Schema): boolean => {
  const { $schema, $id, title, $defs } = sheetSchema();
  return faultsOf(value, { $schema, $id, title, $defs, ...of }).length === 0;
};

const isSmall = (value: unknown): boolean =>
  typeof value === 'string'
    ? value.length <= LONGEST
    : value === undefined || (JSON.stringify(value)?.length ?? 0) <= LONGEST;

/** A name of the workings of objects where it would be a field; the name of a text that the sheet itself gives may be any. */
const isDangerous = (of: Part, key: string): boolean => {
  const names = key.split('.').map(unescaped);
  const own = names.pop() as string;
  const parent = names.reduce<Part | undefined>(partAt, of);
  return names.some(isReserved) || (isReserved(own) && !(isNamed(parent) && isField(parent.each)));
};

/** Whether what lies under a key of a cell, or of the sheet's settings, is what a sheet may hold there. */
export const isStorable = (map: 'cell' | 'sheet', key: string, value: unknown): boolean => {
  if (value === undefined) return true;
  const fields = map === 'cell' ? CELL_FIELDS : SHEET_FIELDS;
  if (key === '' || key.length > MAX_KEY || isDangerous(fields, key) || value instanceof Y.AbstractType)
    return false;
  if (value instanceof Uint8Array || !isSmall(value)) return false;
  if (map === 'cell') {
    if (key === ORDER) return typeof value === 'string' && /^[0-9A-Za-z]{1,1000}$/.test(value);
    if (key === GONE) return value === true;
    if (isElementKey(key) && !key.startsWith('#'))
      return elementIn(value) !== undefined && /^[\w-]{1,64}$/.test(key.slice(fieldOfKey(key).length + 1));
    if (isHead(value)) return isField(partAtKey(CELL_FIELDS, key));
  }
  if (key.startsWith('#')) return map === 'sheet' && typeof value === 'string' && value.length <= 40;
  const part = partAtKey(fields, key);
  if (isField(part)) return isSound(value, part.schema);
  // A group that holds nothing is kept as such; what the format does not know stays whole.
  return part === undefined || (isPlain(value) && Object.keys(value).length === 0);
};

/**
 * A document that sheets from elsewhere are looked at in: its types are there before anything comes.
 * @param gc whether values that were overwritten are forgotten
 */
export const emptyReplica = (gc = true): Y.Doc => {
  const doc = new Y.Doc({ gc });
  doc.getMap('cells');
  doc.getMap('sheet');
  return doc;
};

/** What no sheet holds, for people, and where it stands as far as that is known. */
export interface StoredFault {
  why: string;
  /** Id of the cell; absent for a field of the sheet itself. */
  cell?: string;
  /** Key the field is stored under. */
  key?: string;
}

/**
 * What a transaction put into a document of {@link emptyReplica} that no sheet holds, for people; undefined where all is sound. Foreign shared
 * types, types nested deeper, and fields that depart from the schema.
 */
export const faultIn = (doc: Y.Doc, transaction: Y.Transaction): StoredFault | undefined => {
  const [cells, sheet] = [doc.getMap('cells'), doc.getMap('sheet')];
  for (const name of doc.share.keys())
    if (name !== 'cells' && name !== 'sheet') return { why: 'a foreign part' };
  for (const [type, keys] of transaction.changed) {
    const own = type as unknown as Y.AbstractType<unknown>;
    if (own === cells) {
      for (const id of keys) {
        const cell = id === null ? undefined : cells.get(id);
        if (id === null || id.length > 64) return { why: 'a line that is none' };
        if (!(cell instanceof Y.Map)) return { why: 'a line that is none', cell: id };
        for (const [key, value] of cell)
          if (!isStorable('cell', key, value)) return { why: 'a field of a line', cell: id, key };
      }
    } else if (own === sheet || own.parent === cells) {
      const map = own as Y.Map<unknown>;
      const cell = own === sheet ? undefined : (own._item?.parentSub ?? undefined);
      const at = cell === undefined ? {} : { cell };
      for (const key of keys) {
        if (key === null) return { why: 'a list where none is', ...at };
        if (!isStorable(own === sheet ? 'sheet' : 'cell', key, map.get(key)))
          return { why: `a field of ${own === sheet ? 'the sheet' : 'a line'}`, ...at, key };
      }
    } else return { why: 'a foreign part' };
  }
  return undefined;
};
