import type { EngineFunction } from './network/functions.ts';
import type { Grid } from './network/grid.ts';
import type { Network } from './network/network.ts';
import type { AssembledCell, OutputPlan } from './rows/assembled.ts';
import type { RowKey } from './rows/key.ts';
import type { Figure } from './rows/results.ts';

/** A computed sheet from within, for what evaluates the same trees elsewhere. */
export interface Computed {
  network: Network;
  grid: Grid;
  cells: ReadonlyMap<string, AssembledCell>;
  functions: ReadonlyMap<string, EngineFunction>;
  figure(key: RowKey): Figure | undefined;
  /** Row of the margin to the wear limit on the side wear leads to; undefined where there is no such limit. */
  wearMargin(plan: OutputPlan): RowKey | undefined;
}
