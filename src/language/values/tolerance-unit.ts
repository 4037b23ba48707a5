import { bareUnit } from '../../../shared/quantities/quantities.ts';
import { findUnit } from '../../../shared/units/units.ts';
import { sizeOf } from '../syntax/size-of.ts';
import type { Entry, Span } from '../syntax/syntax.ts';
import type { Amount } from './amount.ts';
import { complain, type Reading } from './reading.ts';
import { withUnit } from './settle.ts';

/** Unit that the size of an entry was written in; absent for a bare number or a designation, a formula or a list. */
export const unitOfSize = (entry: Entry): string | undefined =>
  entry.kind === 'designation' ? undefined : sizeOf(entry)?.unit;

/**
 * ± 0.05 in its own field beside a size of 50 mm, on a sheet of inches: the size's unit, or the sheet's? True where it
 * was asked.
 */
export const asksSizeUnit = (r: Reading, typed: Span & { amounts: readonly Amount[] }): boolean => {
  const { sizeUnit, units } = r.context;
  const { amounts } = typed;
  const own = r.kind && bareUnit(r.kind, units);
  if (sizeUnit === undefined || !own || amounts.every(({ ratio }) => ratio.n === 0n)) return false;
  const [size, sheet] = [findUnit(sizeUnit), findUnit(own)];
  if (!size || !sheet || size.symbol === sheet.symbol) return false;
  const at = amounts.at(-1)?.to ?? typed.to;
  complain(
    r,
    'ask',
    `${r.text.slice(typed.from, typed.to)} has no unit, and the size is in ${size.label}: ${size.label}, or ${sheet.label}?`,
    typed,
    [withUnit(r, at, size.symbol), withUnit(r, at, sheet.symbol)],
  );
  return true;
};
