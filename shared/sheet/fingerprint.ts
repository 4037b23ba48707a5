import { canonical } from './canonical.ts';
import { wellFormed } from './characters.ts';
import type { SheetFile } from './format.ts';
import { isObject } from './schema.ts';
import { sha256 } from './sha256.ts';

/** Settings that change how a sheet looks and no value in it. */
const SHOWN_ONLY = new Set(['length', 'temperature', 'both']);

/** An absent field and an empty one say the same. */
const isEmpty = (value: unknown): boolean =>
  value === undefined ||
  value === '' ||
  value === false ||
  (Array.isArray(value) ? value.length === 0 : isObject(value) && Object.keys(value).length === 0);

const without = (value: unknown, drop: ReadonlySet<string>): unknown => {
  if (!isObject(value)) return value;
  return Object.fromEntries(Object.entries(value).filter(([key]) => !drop.has(key)));
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

const DISPLAY = new Set(['display', 'displayOther']);

/** What the fingerprint is taken of: the sheet without units of display, and without fields that say nothing. */
const essence = (file: SheetFile): unknown =>
  pruned({
    ...file,
    units: without(file.units, SHOWN_ONLY),
    cells: file.cells.map((cell) => {
      const kept = without(cell, DISPLAY) as typeof cell;
      if (!kept.outputs) return kept;
      const outputs = Object.entries(kept.outputs).map(([name, output]) => [name, without(output, DISPLAY)]);
      return { ...kept, outputs: Object.fromEntries(outputs) };
    }),
  });

/**
 * SHA-256, in hexadecimal, of the canonical form of a sheet without its units of display: equal for two shops that
 * hold the same revision, whatever they read it in.
 */
export const fingerprint = (file: SheetFile): string => sha256(canonical(essence(file)));

/** The eight characters people compare, of a sheet or of a whole fingerprint. */
export const shortFingerprint = (of: SheetFile | string): string =>
  (typeof of === 'string' ? of : fingerprint(of)).slice(0, 8);
