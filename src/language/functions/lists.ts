import { powerDimension } from '../../../shared/dimension.ts';
import { type ArgType, numeric, type SheetFunction } from './function.ts';
import { dimensionOf, isProblem, needNoPoint, needQuantity, quantity, UNKNOWN, unify } from './types.ts';

const ONE_KIND = 'they cannot be taken together';

const alike = (name: string, points: boolean) => (args: readonly ArgType[]) => {
  const wrong = args
    .map((arg) => needQuantity(arg, name) ?? (points ? undefined : needNoPoint(arg, name)))
    .find((found) => found);
  return wrong ?? unify(args, ONE_KIND);
};

const sum = (values: readonly number[]): number => values.reduce((total, x) => total + x, 0);

const list = (
  name: string,
  purpose: string,
  points: boolean,
  compute: (values: number[]) => number,
): SheetFunction => ({
  name,
  purpose,
  takes: ['value'],
  args: { min: 1, max: Number.POSITIVE_INFINITY },
  type: alike(name, points),
  compute: numeric((...values) => compute(values)),
});

/** Functions of any number of values of one kind, as OASIS OpenFormula 1.3 has them. */
export const lists: readonly SheetFunction[] = [
  list('MIN', 'least of the values', true, (values) => Math.min(...values)),
  list('MAX', 'greatest of the values', true, (values) => Math.max(...values)),
  list('SUM', 'sum of the values', false, sum),
  list('AVERAGE', 'mean of the values', true, (values) => sum(values) / values.length),
  list('MEDIAN', 'middle value, or the mean of the two in the middle', true, (values) => {
    if (values.some(Number.isNaN)) return Number.NaN;
    const sorted = [...values].sort((a, b) => a - b);
    const half = Math.floor(sorted.length / 2);
    return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
  }),
  {
    ...list('SUMSQ', 'sum of the squares', false, (values) => sum(values.map((x) => x * x))),
    type: (args) => {
      const type = alike('SUMSQ', false)(args);
      if (isProblem(type)) return type;
      const dim = dimensionOf(type);
      return dim ? quantity(powerDimension(dim, 2)) : UNKNOWN;
    },
  },
];
