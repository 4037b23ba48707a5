import type { TradeFunction } from '../../../cells/record/cell.ts';
import { generalFunctions } from '../../language/functions/functions.ts';

/** A function as the grid and the tree evaluator call it: numbers in SI, booleans, and quoted text for table keys. */
export interface EngineFunction {
  name: string;
  args: { min: number; max: number };
  compute: (...args: (number | boolean | string)[]) => number | boolean | { message: string };
}

/** The general functions and the trade's own, in one list. */
export const engineFunctions = (trade: readonly TradeFunction[]): EngineFunction[] => [
  ...generalFunctions.map((fn) => ({
    name: fn.name,
    args: fn.args,
    compute: fn.compute as EngineFunction['compute'],
  })),
  ...trade.map((fn) => ({
    name: fn.name,
    args: { min: fn.takes.length, max: fn.takes.length },
    compute: fn.compute as EngineFunction['compute'],
  })),
];
