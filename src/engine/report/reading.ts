import type { DecisionRule, SheetUnits } from '../../../shared/sheet/format.ts';
import type { Fault } from '../bounds/fault.ts';
import type { Asked } from '../draws/tally.ts';
import type { Grid } from '../network/grid.ts';
import type { Row } from '../network/layout.ts';
import type { Network } from '../network/network.ts';
import type { Standing } from '../network/provenance.ts';
import type { RowKey } from '../rows/key.ts';
import type { Drawn, Figure, Slip } from '../rows/results.ts';

/** What the reporter asks the engine. */
export interface Reading {
  network: Network;
  grid: Grid;
  rule: DecisionRule;
  units: SheetUnits;
  figure(key: RowKey): Figure | undefined;
  nameOf(id: string): string;
  standing(row: Row): Standing;
  drawnOf(asked: Asked): Drawn | undefined;
  /** How many times as wide as linear propagation has it a margin may be where its verdict turns. */
  mostWide(margin: Row, rule: DecisionRule): number;
  /** Why a row has no bounds. */
  fault(row: Row): Fault | undefined;
  slips(id: string): Slip[];
  /** The way taken in place of that of a cell. */
  aside(id: string): string | undefined;
}
