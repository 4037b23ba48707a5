import { type Problem, problem } from '../../../shared/problem.ts';
import { describeSort, type Sort, sortOfQuantity, sortOfUnit } from '../../language/syntax/sort.ts';
import type { Entry, Literal } from '../../language/syntax/syntax.ts';

/** The unit of the other sort that has the same size. */
const SWAPPED: Readonly<Record<string, string>> = { J: 'N.m', kJ: 'kN.m', 'N.m': 'J', 'kN.m': 'kJ' };
const ASKED: ReadonlySet<Sort> = new Set(['torque', 'energy', 'angle', 'plain']);

export const SHARE_OF_NOTHING = 'A share of 0 is nothing: write the spread in the unit of the value.';

const firstOf = (entry: Entry): Literal | undefined => {
  switch (entry.kind) {
    case 'value':
      return entry.value;
    case 'range':
      return entry.low;
    case 'readings':
      return entry.stations[0]?.[0];
    default:
      return undefined;
  }
};

/**
 * What reads well and is probably not what was meant: 5 J where a torque is wanted, or 5 N.m for an energy, which are of
 * one dimension; 5 % for an angle; 10 % of nothing.
 */
export function oddSize(entry: Entry, quantity: string | undefined): Problem | undefined {
  if (entry.kind === 'value' && entry.spread?.percent && entry.value.value === 0)
    return problem('range', SHARE_OF_NOTHING, { from: entry.value.from, to: entry.value.to });
  const size = firstOf(entry);
  const wanted = sortOfQuantity(quantity);
  const sort = size && sortOfUnit(size.unit, size.dimension);
  if (!size || !wanted || !sort || sort === wanted || !ASKED.has(wanted) || !ASKED.has(sort))
    return undefined;
  const other = SWAPPED[size.unit ?? ''];
  const figure = size.text.slice(0, size.text.length - (size.unit?.length ?? 0)).trim();
  const offer = other ? `${figure} ${other}` : undefined;
  return problem(
    'ask',
    `${size.text} is ${describeSort[sort]}, and ${describeSort[wanted]} is wanted here: ${offer ? `is ${offer} meant?` : 'which unit is meant?'}`,
    {
      from: size.from,
      to: size.to,
      ...(offer && entry.kind === 'value' && !entry.spread
        ? { choices: [{ label: offer, entry: offer }] }
        : {}),
    },
  );
}
