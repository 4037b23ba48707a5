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
 * A sheet in which every number has its unit, as `settle` of the document makes it. `bare`: some number still takes its
 * unit from the sheet (nobody knows what quantity it is), so the units of the sheet belong to what it says.
 */
export interface SettledSheet {
  readonly file: SheetFile;
  readonly bare: boolean;
}

/** Begins a fingerprint of the present edition; one without a mark is of edition 1. */
const EDITION = '2:';

/**
 * SHA-256 of the canonical form of what a sheet means: every number with its unit, without units of display. Equal for two
 * shops that hold the same revision, whatever they read it in, and for no two sheets that differ in a value.
 */
export const fingerprint = ({ file, bare }: SettledSheet): string => {
  const { format: _format, version: _version, ...rest } = essence(file) as Record<string, unknown>;
  const { length, temperature } = file.units;
  const units = bare
    ? { bareIn: { length, temperature: temperature ?? (length === 'in' ? 'degF' : 'degC') } }
    : {};
  return EDITION + sha256(canonical({ fingerprint: 2, ...rest, ...units }));
};

/**
 * Edition 1, to know again what older programs and paper say: of the sheet as it was written, so that a number without a
 * unit says the same in inches and in millimetres.
 */
export const fingerprintOfEdition1 = (file: SheetFile): string =>
  sha256(canonical(essence({ ...file, version: 1 as SheetFile['version'] })));

export const isOfEdition1 = (print: string): boolean => !print.startsWith(EDITION);

/** Capitals and digits of which no two look alike: no 0 and O, no 1 and I. */
const LETTERS = '23456789ABCDEFGHJKLMNPQRSTUVWXYZ';
const SHOWN = 20;

/**
 * What people compare by eye: twenty characters in groups of four, 100 bits of the whole; of an edition 1 fingerprint the
 * eight that stand on paper of its time.
 */
export const shortFingerprint = (print: string): string => {
  if (isOfEdition1(print)) return print.slice(0, 8);
  const bits = BigInt(`0x${print.slice(EDITION.length, EDITION.length + (SHOWN * 5) / 4)}`);
  const letters = Array.from(
    { length: SHOWN },
    (_, k) => LETTERS[Number((bits >> BigInt(5 * (SHOWN - 1 - k))) & 31n)],
  ).join('');
  return (letters.match(/.{4}/g) ?? []).join(' ');
};
