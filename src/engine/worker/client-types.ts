import type { WorkedExample } from '../../../cells/record/cell.ts';
import type { KeptValue, SheetFile } from '../../../shared/sheet/format.ts';
import type { WorkedOut } from '../book/worked-example.ts';
import type { SheetChange } from '../rows/change.ts';
import type { Contribution, SheetResults } from '../rows/results.ts';

/** The engine seen from the page: requests are merged while one is in flight, results come in revision order. */
export interface EngineClient {
  load(file: SheetFile): void;
  update(change: SheetChange): void;
  /**
   * Called once per revision with the changed cells; returns the way to stop. Of what did not change since the cell was
   * last told of, every part is the same object.
   */
  onResults(listener: (results: SheetResults) => void): () => void;
  /** Settles once all that was handed in so far is answered. */
  caughtUp(): Promise<void>;
  /** Budget of one output, largest share first. */
  budget(cell: string, output: string): Promise<Contribution[]>;
  /** Ids of the cells upstream and downstream of a cell, for the margin marks. */
  chain(cell: string): Promise<{ upstream: string[]; downstream: string[] }>;
  /** Table values the sheet is computed with, to be kept in a file of a finished job. */
  tables(): Promise<KeptValue[]>;
  /** A worked example of a kind of cell, computed on a sheet of its own. */
  example(kind: string, example: WorkedExample): Promise<WorkedOut>;
  close(): void;
}
