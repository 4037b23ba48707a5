import type { CheckName } from '../trial/checks.ts';
import type { InputPlace } from '../trial/place.ts';

/** A check, with what is said of it there. */
export interface CheckSaid extends CheckName {
  words: string;
}

/** One end of a window. */
export interface WindowEnd {
  /** SI, as it is told: every check holds there. */
  at: number;
  /** The checks that no longer hold one step further; empty where none was met in the range looked through. */
  closedBy: CheckSaid[];
}

/** A range of an input in which every check below it holds. */
export interface WindowPiece {
  low: WindowEnd;
  high: WindowEnd;
}

/** How far an input may go. */
export interface WindowFound {
  is: 'found';
  place: InputPlace;
  /** `bush_od`, `press.interference`. */
  name: string;
  /** Symbol of the unit in which the ends are told, and to how many places. */
  unit: string;
  places: number;
  /** As it stands, SI; where it has a value. */
  value?: number;
  /** The piece that holds the present value, and others. */
  piece?: WindowPiece;
  others: WindowPiece[];
  searched: { low: number; high: number };
  /** Checks that the window goes by. */
  checks: CheckName[];
  /** Checks that fail, or wait, whatever this input does. */
  leftOut: CheckSaid[];
  metalOn?: 'low' | 'high';
}

/** Why there is none: nothing was changed. */
interface NoWindow {
  is: 'none';
  place: InputPlace;
  why: string;
  /** It is nothing that could be another value. */
  stays?: boolean;
  leftOut: CheckSaid[];
}

export type WindowAnswer = WindowFound | NoWindow;
