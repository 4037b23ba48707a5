import type { RowKey } from '../rows/key.ts';
import type { Figure } from '../rows/results.ts';
import type { Datum } from './datum.ts';
import type { Pair } from './pairs.ts';

/** A range a difference of two sizes is expected in, SI. */
export interface FitRange {
  low: number;
  high: number;
  /** For people: `the limits of `clearance``. */
  said: string;
}

/** What a question is asked against: the sheet as it stands. */
export interface SlipSheet {
  figure(key: RowKey): Figure | undefined;
  /** Value of a row with everything at nominal; undefined where it has none. */
  nominal(key: RowKey): number | undefined;
  limits(datum: Datum): {
    lower?: number | undefined;
    upper?: number | undefined;
    wear?: number | undefined;
    metalOn?: 'low' | 'high' | undefined;
  };
  /** What the difference of a pair ought to be; `other` is the size beside the one asked about. */
  rangeOf(pair: Pair, other: number): FitRange | undefined;
  /** Readings of the lines like it, and of the other part of a fit: the same hand wrote them. */
  beside(datum: Datum): readonly Datum[];
  /** Levels of the lines like it, SI. */
  alike(datum: Datum): number[];
  /** The gauge it was read with, as far as its range and its step are known, SI. */
  gaugeOf(datum: Datum): { low?: number; high?: number; step?: number } | undefined;
  /** Name, in backticks, of another line with the very same readings. */
  copiedFrom(datum: Datum): string | undefined;
  /** What the cell is called, and the input or output concerned. */
  words(datum: Datum): string;
  /** A size written as the datum writes its own. */
  size(si: number, datum: Datum): string;
  /** Worth of one step of the last figure written, SI. */
  step(datum: Datum): number;
  /** And of what was read in another row, 0 where nothing was. */
  stepAt(key: RowKey): number;
  /** Name of the cell that owns a row, in backticks. */
  nameOf(key: RowKey): string;
}
