import type { Movement, TradeFunction } from '../../../cells/record/cell.ts';
import type { Bound } from '../../language/bounds/bound.ts';
import type { Argument } from '../../language/bounds/declared.ts';
import { comparison, isComparison, isStepped } from '../../language/compile/ties.ts';
import { generalFunctions } from '../../language/functions/functions.ts';
import type { CompareOperator } from '../../language/syntax/syntax.ts';

/** A function as the grid and the tree evaluator call it: numbers in SI, booleans, and quoted text for table keys. */
export interface EngineFunction {
  name: string;
  args: { min: number; max: number };
  compute: (...args: (number | boolean | string)[]) => number | boolean | { message: string };
  /** Of a function of the trade: how it moves with its numbers, by their names. */
  movement?: Movement | undefined;
  takes?: readonly string[];
  /** Encloses it, where it knows how. */
  bound?: (args: readonly Argument[]) => Bound;
}

/** A throw in one is a fault of it, and no reason for other rows to stand still. */
const guarded =
  (name: string, compute: EngineFunction['compute']): EngineFunction['compute'] =>
  (...args) => {
    try {
      return compute(...args);
    } catch (thrown) {
      return { message: `${name} failed: ${thrown instanceof Error ? thrown.message : String(thrown)}` };
    }
  };

/** The general functions and the trade's own, in one list. */
export const engineFunctions = (trade: readonly TradeFunction[]): EngineFunction[] => [
  ...generalFunctions.map((fn) => ({
    name: fn.name,
    // Behind the arguments of one with steps comes the largest operand that entered.
    args: isStepped(fn.name) ? { min: fn.args.max + 1, max: fn.args.max + 1 } : fn.args,
    compute: fn.compute as EngineFunction['compute'],
  })),
  ...trade.map((fn) => ({
    name: fn.name,
    args: { min: fn.takes.length, max: fn.takes.length },
    compute: guarded(fn.name, fn.compute as EngineFunction['compute']),
    movement: fn.movement,
    takes: fn.takes.map(({ name }) => name),
  })),
  {
    name: 'COMPARE',
    args: { min: 4, max: 4 },
    compute: (op, left, right, scale) =>
      isComparison(String(op)) &&
      comparison(op as CompareOperator)(Number(left), Number(right), Number(scale)),
  },
];
