import type { Unit } from '../../../shared/units/units.ts';
import type { CheckName, Stood } from '../trial/checks.ts';
import type { FigurePlace, InputPlace } from '../trial/place.ts';

/** Where a figure is wanted: at a value (SI), in the middle of its limits, or so that one of them is kept by the rule. */
export type Want = { at: 'value'; value: number } | { at: 'middle' | 'lower' | 'upper' | 'wear' };

/** Sizes that can be made: drills, whole steps, or the sizes there are of a stock, in the order of their values (SI). */
export type Steps =
  | { of: 'drills' }
  | { of: 'step'; step: number }
  | { of: 'stock'; sizes: readonly StockSize[] };

/** A size there is: its number in its own unit, and what it is, SI. */
export interface StockSize {
  text: string;
  unit: Unit;
  value: number;
}

/** A question as it is typed. */
export interface AskedQuestion {
  figure: FigurePlace;
  /** `3 thou`, `middle`, `lower limit`, `upper limit`, `wear limit`. */
  want: string;
  change: InputPlace;
  /** `2.0 in .. 2.5 in`. */
  between?: string;
  /** `0.0005 in`, `drills`, `1 in; 1 1/4 in; 35 mm`. */
  steps?: string;
}

export interface Question {
  figure: FigurePlace;
  want: Want;
  change: InputPlace;
  /** Range searched, SI; one about the present value where absent. */
  between?: readonly [number, number];
  steps?: Steps;
}

/** An input that may move, as it is offered. */
export interface Offered extends InputPlace {
  /** As formulas name it: `bush_bore`, `press.temperature`. */
  name: string;
  label: string;
  quantity?: string;
  display?: string;
  /** Its entry as it stands; the library's own where none is typed. */
  text: string;
  /** The entry is a formula, which an answer takes the place of. */
  isFormula?: boolean;
  /** A size still to be cut. */
  isToCut: boolean;
  /** It is a row of a table, tried one by one. */
  isChoice?: boolean;
  /** How far the figure moves, SI, with a thousandth of an inch, a kelvin, or a hundredth of the input. */
  influence: number;
}

/** A check, with what it says as the sheet stands and what it would say. */
interface Consequence extends CheckName {
  before: Stood;
  after: Stood;
}

/** What every check below an input says once an answer is taken in. */
export interface Consequences {
  /** Those that then say something else. */
  turned: Consequence[];
  /** Those that do not hold, and did not before; with what they say. */
  failing: (CheckName & { words: string })[];
  /** How many say the same as now, the failing ones among them. */
  same: number;
}

/** What may move a figure; or why nothing can. */
export interface Offers {
  inputs: Offered[];
  reason?: string;
  /** What was asked cannot be read. */
  isUnread?: true;
}

export interface Solution {
  /** What the input comes to, SI; absent of a row of a table. */
  value?: number;
  /** Its entry from then on. */
  text: string;
  /** What a row of a table is called. */
  name?: string;
  /** What the figure then comes to, SI. */
  figure: number;
  /** It does so from here to there, SI. */
  all?: readonly [number, number];
  /** Sizes that can be made on either side of it. */
  made?: Solution[];
  /** Of sizes that can be made: the one on the side where metal is still on, or that keeps the limit. */
  isAim?: boolean;
  /** What the checks then say. */
  checks?: Consequences;
  /** Of the rows of a table: it does what is wanted; of several sizes, the nearest. */
  fits?: boolean;
}

export interface Answer {
  /** In order; of rows of a table the best first. */
  solutions: Solution[];
  /** The range that was searched, SI. */
  between?: readonly [number, number];
  /** Of a choice: what was tried, where it is not all there is. */
  tried?: string;
  /** Why there is none. */
  reason?: string;
  /** What was asked cannot be read. */
  isUnread?: true;
}
