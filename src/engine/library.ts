import type { CellKind, ChoiceTable, TradeFunction } from '../../cells/cell.ts';

/** Everything the engine is told from outside; passed in, never global. */
export interface Library {
  kinds: ReadonlyMap<string, CellKind>;
  tables: ReadonlyMap<string, ChoiceTable>;
  functions: readonly TradeFunction[];
}
