import type { CellKind, TradeFunction } from './record/cell.ts';

/** Trade functions that a kind's formulas call, in the order of the library. */
export const functionsUsed = (kind: CellKind, functions: readonly TradeFunction[]): TradeFunction[] => {
  const texts = [
    ...kind.inputs.map((input) => input.default),
    ...kind.outputs.flatMap(({ formula, spread }) => [formula, spread?.low, spread?.high]),
    ...(kind.validity ?? []).map((one) => one.holds),
  ];
  const called = new Set(texts.flatMap((text) => text?.match(/\b[A-Z][A-Z0-9]*(?=\s*\()/g) ?? []));
  return functions.filter((one) => called.has(one.name));
};
