import { problem } from '../../../shared/problem.ts';
import type { ArgType, SheetFunction } from './function.ts';
import { isProblem, LOGICAL, needLogical, unify } from './types.ts';

const MANY = Number.POSITIVE_INFINITY;

const logical = (name: string) => (args: readonly ArgType[]) =>
  args.map((arg) => needLogical(arg, name)).find((wrong) => wrong) ?? LOGICAL;

/**
 * Conditions, as OASIS OpenFormula 1.3 has them, but IF with both its branches. Engines compute IF without
 * the branch it does not take; AND and OR need all their arguments, so a fault in one is a fault of the whole.
 * ISBLANK is settled before computing.
 */
export const logic: readonly SheetFunction[] = [
  {
    name: 'IF',
    purpose: 'one of two values, by a comparison',
    takes: ['comparison', 'then', 'otherwise'],
    args: { min: 3, max: 3 },
    type: ([condition, ...branches]) => {
      const type =
        needLogical(condition!, 'IF') ?? unify(branches, 'IF must give one kind of value either way');
      return isProblem(type) || type.kind !== 'text'
        ? type
        : problem('dimension', 'IF cannot give a text.', branches[0]!);
    },
    compute: (condition, then, otherwise) => (condition ? then! : otherwise!),
  },
  {
    name: 'AND',
    purpose: 'true when every comparison holds',
    takes: ['comparison'],
    args: { min: 1, max: MANY },
    type: logical('AND'),
    compute: (...all) => all.every(Boolean),
  },
  {
    name: 'OR',
    purpose: 'true when a comparison holds',
    takes: ['comparison'],
    args: { min: 1, max: MANY },
    type: logical('OR'),
    compute: (...all) => all.some(Boolean),
  },
  {
    name: 'NOT',
    purpose: 'true when the comparison does not hold',
    takes: ['comparison'],
    args: { min: 1, max: 1 },
    type: logical('NOT'),
    compute: (one) => !one,
  },
  {
    name: 'TRUE',
    purpose: 'holds',
    takes: [],
    args: { min: 0, max: 0 },
    type: () => LOGICAL,
    compute: () => true,
  },
  {
    name: 'FALSE',
    purpose: 'does not hold',
    takes: [],
    args: { min: 0, max: 0 },
    type: () => LOGICAL,
    compute: () => false,
  },
  {
    name: 'ISBLANK',
    purpose: 'true when an optional input was left blank',
    takes: ['input'],
    args: { min: 1, max: 1 },
    type: () => LOGICAL,
    compute: () => false,
  },
];
