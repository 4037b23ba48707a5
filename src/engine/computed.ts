import type { EngineFunction } from './network/functions.ts';
import type { Grid } from './network/grid.ts';
import type { Network } from './network/network.ts';
import type { AssembledCell, OutputPlan } from './rows/assembled.ts';
import type { SheetSettings } from './rows/change.ts';
import type { RowKey } from './rows/key.ts';
import type { Figure } from './rows/results.ts';
import type { SheetScope } from './rows/scope.ts';

/** A computed sheet from within, for what evaluates the same trees elsewhere. */
export interface Computed {
  network: Network;
  grid: Grid;
  cells: ReadonlyMap<string, AssembledCell>;
  functions: ReadonlyMap<string, EngineFunction>;
  /** What the lines say, and the library. */
  scope: SheetScope;
  settings: SheetSettings;
  figure(key: RowKey): Figure | undefined;
  /** Row of the margin to the wear limit on the side wear leads to; undefined where there is no such limit. */
  wearMargin(plan: OutputPlan): RowKey | undefined;
}
