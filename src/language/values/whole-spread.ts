import type { Unit } from '../../../shared/units/unit.ts';
import { findUnit } from '../../../shared/units/units.ts';
import type { Span } from '../syntax/syntax.ts';
import type { Amount } from './amount.ts';
import { complain, type Reading } from './reading.ts';
import { withUnit } from './settle.ts';

const SMALL: Readonly<Record<string, string>> = { in: 'thou', mm: 'um' };

const isWhole = ({ ratio, digits, unit }: Amount): boolean =>
  unit === undefined && ratio.d === 1n && (digits ?? 0) === 0;

/**
 * ±5, -9/-25: in the small unit of the drawing, or whole millimetres or inches? True where it was asked. `unit` is that
 * of the size the spread belongs to, or the sheet's where it stands alone.
 */
export const asksWhole = (r: Reading, typed: Span & { amounts: readonly Amount[] }, unit: Unit): boolean => {
  const small = SMALL[unit.symbol];
  const { amounts } = typed;
  if (small === undefined || !amounts.every(isWhole) || amounts.every(({ ratio }) => ratio.n === 0n))
    return false;
  const at = amounts.at(-1)?.to ?? typed.to;
  complain(
    r,
    'ask',
    `${r.text.slice(typed.from, typed.to)} has no unit and no decimals: is it in ${findUnit(small)?.label ?? small} or in ${unit.label}?`,
    typed,
    [withUnit(r, at, small), withUnit(r, at, unit.symbol)],
  );
  return true;
};
