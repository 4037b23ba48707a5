import type { TradeFunction } from '../../../cells/record/cell.ts';
import { angles } from './angles.ts';
import type { SheetFunction } from './function.ts';
import { lists } from './lists.ts';
import { logic } from './logic.ts';
import { math } from './math.ts';
import { rounding } from './rounding.ts';
import { fromTrade } from './trade.ts';

export type { ArgType, SheetFunction } from './function.ts';

/** The general functions, named and ordered as OASIS OpenFormula 1.3 names them. */
export const generalFunctions: readonly SheetFunction[] = [
  ...lists,
  ...math,
  ...angles,
  ...rounding,
  ...logic,
];

const catalogues = new WeakMap<readonly TradeFunction[], ReadonlyMap<string, SheetFunction>>();

/** General functions and those of the cell library by name. */
export const catalogueOf = (trade: readonly TradeFunction[]): ReadonlyMap<string, SheetFunction> => {
  let found = catalogues.get(trade);
  if (!found) {
    found = new Map([...generalFunctions, ...trade.map(fromTrade)].map((fn) => [fn.name, fn] as const));
    catalogues.set(trade, found);
  }
  return found;
};
