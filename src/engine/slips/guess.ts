import type { Literal } from '../../language/syntax/syntax.ts';
import type { Datum } from './datum.ts';

/** A reading, or the level of a whole list of them, that something is asked about. */
export interface Asked {
  datum: Datum;
  /** Numbers of the readings concerned. */
  indices: readonly number[];
  /** Their value, SI; of several the median. */
  value: number;
  /** Readings of other lines that the same hand wrote: of the lines like it, and of the other part of a fit. */
  beside?: readonly Literal[];
}

/** What a reading would be if a certain slip had been made. */
export interface Guess {
  slip: string;
  /** SI. */
  value: number;
  /** Share of the readings of that value that are written down as the one in question is (common practice, no source). */
  share: number;
  /** The number as it would be written, where the slip is one of its figures. */
  text?: string;
  /** For people, a question: `Is the micrometer one turn out?` */
  question: string;
  /** The text with the readings put right; undefined where it cannot be written. */
  offer: () => string | undefined;
}

/** Share of the readings that are written down wrong in one certain way (common practice, no source). */
export const USUAL = 1 / 300;

/** One way in which readings go wrong. */
export type Slipway = (asked: Asked) => Guess[];
