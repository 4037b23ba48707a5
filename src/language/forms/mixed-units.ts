import { ratioNumber } from '../../../shared/units/exact.ts';
import type { Span } from '../syntax/syntax.ts';
import type { Amount } from '../values/amount.ts';
import { complain, type Reading, remedy } from '../values/reading.ts';

/** How far readings of one part may lie apart, as a factor, for one to be the other in millimetres. */
const NEAR = 1.15;
const OTHER = { in: 'mm', mm: 'in' } as const;

const isNear = (ratio: number): boolean => ratio > 25.4 / NEAR && ratio < 25.4 * NEAR;

/**
 * 57.15; 57.16; 2.2505 in: a unit behind one of the readings, which would make of the others no size of the same part,
 * and would where they are in the other system.
 */
export const asksMixedUnits = (r: Reading, list: Span, amounts: readonly Amount[]): boolean => {
  const bare = amounts.filter(({ unit }) => !unit);
  const symbol = amounts.find(({ unit }) => unit)?.unit?.symbol;
  if (bare.length === 0 || (symbol !== 'in' && symbol !== 'mm')) return false;
  const sizes = (of: readonly Amount[]): number[] => of.map(({ ratio }) => Math.abs(ratioNumber(ratio)));
  const marked = amounts.filter(({ unit }) => unit);
  if (marked.some(({ unit }) => unit?.symbol !== symbol)) return false;
  const isOther = sizes(bare).every((own) =>
    sizes(marked).every((size) => isNear(symbol === 'in' ? own / size : size / own)),
  );
  if (!isOther) return false;
  const entries = [OTHER[symbol], symbol].map((unit) => {
    let text = r.text;
    for (const { to } of [...bare].reverse()) text = `${text.slice(0, to)} ${unit}${text.slice(to)}`;
    return text;
  });
  complain(
    r,
    'ask',
    `Only some of these readings have a unit, and the others are about 25.4 times as ${symbol === 'in' ? 'large' : 'small'}: is ${entries[0]?.trim()} meant?`,
    list,
    entries.map(remedy),
  );
  return true;
};
