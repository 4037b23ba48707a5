import type { Problem } from '../../../shared/problem.ts';
import type { Expr } from '../../language/syntax/syntax.ts';
import type { RowKey } from './key.ts';

/**
 * A row is one quantity (or logical) of the sheet in every case. Rows are what the assembler makes of cells and what
 * the network lays out on the grid. References inside a row's expressions carry the KEY of the row they mean as their
 * name and no output (`key.ts`).
 */
export interface RowDefinition {
  key: RowKey;
  /** Id of the cell the row belongs to, for messages and for telling which cell to report. */
  owner: string;
  body: RowBody;
  /** How it bears on proof; absent where that follows from what it depends on. */
  proof?: RowProof;
  /** Where it stands in a ring it is solved so that what comes out round the ring is what goes in. */
  solved?: SolvedIn;
}

/** How the size of a ring is looked for and told. */
export interface SolvedIn {
  /** Symbol of the unit. */
  unit: string;
  isPoint?: true;
  isLength?: true;
}

/**
 * How a row bears on whether a figure is proven. `is`: what it is whatever it depends on: read off a part; the size of a part
 * still to be made; or neither, which stops no proof (a size of measuring equipment, a count); a `factor` is neither
 * either, but what it enters follows from it by no geometry.
 */
export interface RowProof {
  is?: 'measured' | 'planned' | 'settled' | 'factor';
  /** What stands in the formula itself and stops proof where the figure moves with it. */
  spots?: readonly ProofSpot[];
  /** It is worked out where a reading is wanted: a plan, unless something that was read moves it. */
  ofReadings?: true;
  /** It follows by a model; by geometry alone, whatever factors it takes in. */
  basis?: 'model' | 'geometry';
  /** Rows it takes in that are sizes of measuring equipment there, whatever they are elsewhere. */
  aside?: readonly RowKey[];
}

/** A number, a name or a function in a formula, by its place in the text: a size still to be made, or a model's. */
export interface ProofSpot {
  from: number;
  to: number;
  is: 'planned' | 'model';
}

export type Distribution = 'rectangular' | 'normal' | 'triangular' | 'arcsine';

/** So many degrees of freedom are as good as Infinity. */
export const MANY = 1e6;

/** How far a source reaches each way of its nominal, as SI offsets or as expressions over nominal values. */
export interface SourceEnds {
  low: number | Expr;
  high: number | Expr;
  distribution: Distribution;
  /** Ends of a normal source stand at this many standard uncertainties: 2, of few degrees of freedom as many more by Student's t. */
  k: number;
  /** Degrees of freedom, Infinity where the doubt itself is not in doubt. */
  dof: number;
  /** It is the least there can be: a reading with neither gauge nor ± may be off by far more than its figures tell. */
  partial?: true;
  /** A size read at one place, or in one direction: nothing is known by it of the rest of the part. */
  where?: 'place' | 'direction';
  /** For people. */
  label: string;
}

export type RowBody =
  /** A number as entered or taken from a table. */
  | { kind: 'number'; value: number }
  /** Follows the rows it refers to in every case; `held` stands at nominal only (a chosen size: its number is on the dial). */
  | { kind: 'formula'; expr: Expr; held?: boolean }
  /** One independent source of spread about a nominal. A nominal by formula is held. */
  | { kind: 'source'; nominal: number | Expr; ends: SourceEnds }
  /** No value: why. */
  | { kind: 'problem'; problem: Problem };

/** Standard uncertainty of a source from the effect of its two ends: JCGM 100 4.3. */
export const standardFromEnds = (
  low: number,
  high: number,
  distribution: Distribution,
  k: number,
): number => {
  const half = Math.abs(high - low) / 2;
  switch (distribution) {
    case 'rectangular':
      return half / Math.sqrt(3);
    case 'triangular':
      return half / Math.sqrt(6);
    case 'arcsine':
      return half / Math.SQRT2;
    case 'normal':
      return half / k;
  }
};
