import type { WorkedExample } from '../../../cells/record/cell.ts';
import type { KeptValue, SheetFile } from '../../../shared/sheet/format.ts';
import type { WorkedOut } from '../book/worked-example.ts';
import type { SheetChange } from '../rows/change.ts';
import type { Contribution, SheetResults } from '../rows/results.ts';

/** Page to worker. Each is answered with its number. */
export type Request = { n: number } & (
  | { ask: 'load'; file: SheetFile }
  | { ask: 'update'; change: SheetChange }
  | { ask: 'budget'; cell: string; output: string }
  | { ask: 'chain'; cell: string }
  | { ask: 'tables' }
  /** An example of a kind: the worker's library has none. */
  | { ask: 'example'; kind: string; example: WorkedExample }
);

/** Number of a reply that nobody asked for: results that changed with what was fetched meanwhile. */
export const UNASKED = -1;

/** Worker to page. */
export type Reply = { n: number } & (
  | { gives: 'results'; results: SheetResults }
  | { gives: 'budget'; budget: Contribution[] }
  | { gives: 'chain'; chain: { upstream: string[]; downstream: string[] } }
  | { gives: 'tables'; tables: KeptValue[] }
  | { gives: 'example'; example: WorkedOut }
  | { gives: 'failure'; message: string }
);
