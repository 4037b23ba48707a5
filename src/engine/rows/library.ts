import type { CellKind, ChoiceTable, TradeFunction } from '../../../cells/record/cell.ts';

/** Everything the engine is given from outside; passed in, never global. */
export interface Library {
  kinds: ReadonlyMap<string, CellKind>;
  tables: ReadonlyMap<string, ChoiceTable>;
  functions: readonly TradeFunction[];
  /** Where it is fetched as it is used: there is such a kind, but it has not come. */
  lacks?(kind: string): boolean;
}

/** Said where a kind of cell could not be fetched. */
export const notFetched = (kind: string): string =>
  `What the library has for "${kind}" could not be fetched. Nothing entered is lost. It is tried again with the next entry you make; if it still does not come, load the page again once the network or the server is back.`;
