import type { Datum } from './datum.ts';

/** A reading, or the level of a whole list of them, that something is asked about. */
export interface Asked {
  datum: Datum;
  /** Numbers of the readings concerned. */
  indices: readonly number[];
  /** Their value, SI; of several the median. */
  value: number;
}

/** What a reading would be if a certain slip had been made. */
export interface Guess {
  slip: string;
  /** SI. */
  value: number;
  /** How near to what is expected the value must come, SI, beside what the expectation itself allows. */
  reach: number;
  /**
   * Share of the readings that go wrong this way. Where it is given the guess may be right by chance, so that it is
   * weighed by its odds.
   */
  share?: number;
  /** For people, a question: `Is the micrometer one turn out?` */
  question: string;
  /** The text with the readings put right; undefined where it cannot be written. */
  offer: () => string | undefined;
}

/** One way in which readings go wrong. */
export type Slipway = (asked: Asked) => Guess[];
