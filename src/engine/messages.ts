import type { KeptValue, SheetFile } from '../../shared/sheet/format.ts';
import type { SheetChange } from './change.ts';
import type { Contribution, SheetResults } from './results.ts';
import type { WorkedOut } from './worked-example.ts';

/** Page to worker. Each is answered with its number. */
export type Request = { n: number } & (
  | { ask: 'load'; file: SheetFile }
  | { ask: 'update'; change: SheetChange }
  | { ask: 'budget'; cell: string; output: string }
  | { ask: 'chain'; cell: string }
  | { ask: 'tables' }
  /** The example at this place of a kind's list. */
  | { ask: 'example'; kind: string; at: number }
);

/** Worker to page. */
export type Reply = { n: number } & (
  | { gives: 'results'; results: SheetResults }
  | { gives: 'budget'; budget: Contribution[] }
  | { gives: 'chain'; chain: { upstream: string[]; downstream: string[] } }
  | { gives: 'tables'; tables: KeptValue[] }
  | { gives: 'example'; example: WorkedOut }
  | { gives: 'failure'; message: string }
);
