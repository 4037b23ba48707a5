import { canonical } from './canonical.ts';
import { CELL_FIELDS } from './cell-fields.ts';
import { wellFormed } from './characters.ts';
import { isField, type Part, partAt } from './field.ts';
import type { SheetFile } from './format.ts';
import { isObject } from './schema.ts';
import { sha256 } from './sha256.ts';
import { SHEET_FIELDS } from './sheet-fields.ts';

/** An absent field and an empty one say the same. */
const isEmpty = (value: unknown): boolean =>
  value === undefined ||
  value === '' ||
  value === false ||
  (Array.isArray(value) ? value.length === 0 : isObject(value) && Object.keys(value).length === 0);

/** Without the fields that only say how values are shown. */
const withoutShown = (value: unknown, of: Part): unknown => {
  if (isField(of) || !isObject(value)) return value;
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, member]) => {
      const part = partAt(of, key);
      if (isField(part) && part.shown) return [];
      return [[key, part ? withoutShown(member, part) : member]];
    }),
  );
};

const pruned = (value: unknown): unknown => {
  if (typeof value === 'string') return wellFormed(value);
  if (Array.isArray(value)) return value.map(pruned);
  if (!isObject(value)) return value;
  return Object.fromEntries(
    Object.entries(value)
      .map(([key, member]) => [wellFormed(key), pruned(member)] as const)
      .filter(([, member]) => !isEmpty(member)),
  );
};

/** What the fingerprint is taken of: the sheet without units of display, and without fields that say nothing. */
const essence = (file: SheetFile): unknown =>
  pruned({
    ...(withoutShown(file, SHEET_FIELDS) as SheetFile),
    cells: file.cells.map((cell) => withoutShown(cell, CELL_FIELDS)),
  });

/**
 * SHA-256, in hexadecimal, of the canonical form of a sheet without its units of display: equal for two shops that
 * hold the same revision, whatever they read it in.
 */
export const fingerprint = (file: SheetFile): string => sha256(canonical(essence(file)));

/** The eight characters people compare, of a sheet or of a whole fingerprint. */
export const shortFingerprint = (of: SheetFile | string): string =>
  (typeof of === 'string' ? of : fingerprint(of)).slice(0, 8);
