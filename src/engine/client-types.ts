import type { CellKind, ChoiceTable, TradeFunction } from '../../cells/cell.ts';
import type {
  CellRecord,
  DecisionRule,
  KeptValue,
  SheetFile,
  SheetUnits,
} from '../../shared/sheet/format.ts';
import type { Contribution, SheetResults } from './results.ts';
import type { WorkedOut } from './worked-example.ts';

/** Everything the engine is told from outside; passed in, never global. */
export interface Library {
  kinds: ReadonlyMap<string, CellKind>;
  tables: ReadonlyMap<string, ChoiceTable>;
  functions: readonly TradeFunction[];
}

export interface SheetSettings {
  units: SheetUnits;
  rule: DecisionRule;
  /** An entry; 20 degC when absent (ISO 1). */
  referenceTemperature?: string;
}

/** One edit as the engine takes it. Records carry names, not ids, in their formulas. */
export interface SheetChange {
  changed?: CellRecord[];
  gone?: string[];
  settings?: SheetSettings;
  /** As-measured values are left out when false: the sheet as planned. True when absent. */
  measured?: boolean;
}

/** The engine seen from the page: requests are merged while one is in flight, results come in revision order. */
export interface EngineClient {
  load(file: SheetFile): void;
  update(change: SheetChange): void;
  /** Called once per revision with the changed cells; returns the way to stop. */
  onResults(listener: (results: SheetResults) => void): () => void;
  /** Budget of one output, largest share first. */
  budget(cell: string, output: string): Promise<Contribution[]>;
  /** Ids of the cells upstream and downstream of a cell, for the margin marks. */
  chain(cell: string): Promise<{ upstream: string[]; downstream: string[] }>;
  /** Table values the sheet is computed with, to be kept in a file of a finished job. */
  tables(): Promise<KeptValue[]>;
  /** A worked example of a kind of cell, by its place in the kind's list, computed on a sheet of its own. */
  example(kind: string, at: number): Promise<WorkedOut>;
  close(): void;
}
