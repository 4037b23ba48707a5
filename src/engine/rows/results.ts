import type { CheckVerdict } from '../../../shared/checks/check.ts';
import type { Problem } from '../../../shared/problem.ts';
import type { RowKey } from './key.ts';

/** One figure with its spread, all in SI. */
export interface Figure {
  /** Value with every source at its nominal: what is shown. */
  value: number;
  /** Worst case: at least everything the value can be. Infinite on a side that has no bound. */
  low: number;
  high: number;
  /** How far the worst case reaches is not settled: at most to these ends. */
  atMost?: boolean;
  /** Centre of the statistical figure: nominal plus the sum of (low effect + high effect) / 2. */
  centre: number;
  /** Standard uncertainty (JCGM 100). */
  u: number;
  /** Effective degrees of freedom (Welch-Satterthwaite); Infinity where no source has finite ones. */
  dof: number;
  /** Size to aim for when it is being cut; only with an unequal tolerance. */
  aim?: number;
}

/** Share of one source in a figure's spread. */
export interface Contribution {
  /** Key of the source, equal wherever the same source is shared. */
  source: RowKey;
  /** For people: `micrometer 2-3 in, permissible error`. */
  label: string;
  /** Id of the cell that owns the source. */
  cell: string;
  /** Effect of the source alone at its low and at its high end, SI. */
  low: number;
  high: number;
  /** Standard uncertainty it contributes, SI. */
  u: number;
  dof: number;
}

/** Limits as computed, SI. */
export interface LimitFigures {
  lower?: Figure;
  upper?: Figure;
  wear?: Figure;
  metalOn?: 'low' | 'high';
  /** What is held to them where the value shown is not: the least to the lower one, the greatest to the upper one. */
  ends?: { least: Figure; greatest: Figure };
}

/** One output of a cell: `value` for a plain cell; `mean`, `least` ... besides for a set of readings. */
/** A figure by draws, SI. */
export interface Drawn {
  /** How many draws it is from; 0 before the first look. */
  draws: number;
  /** No more draws will be made. */
  isLast: boolean;
  /** Mean and standard uncertainty. */
  centre: number;
  u: number;
  /** The band that the rule goes by: the share it asks for lies in it, and more by what chance may take away. */
  low: number;
  high: number;
  /** Share of the draws beyond each limit. */
  missed: { lower?: number; upper?: number; wear?: number };
  /** Share beyond neither of the limits of a new part. */
  within: number;
}

export interface OutputResult {
  /** Kind of quantity, where known. */
  quantity?: string;
  label?: string;
  /** Unit to show it in, where the cell or its kind names one. */
  display?: string;
  planned?: Figure;
  measured?: Figure;
  /** Measured minus planned, with the doubt of the difference. */
  difference?: Figure;
  /** For an issued size: what the formula would now give. */
  replanned?: Figure;
  /** What downstream cells take. */
  stands?: 'planned' | 'measured' | 'issued';
  logical?: boolean;
  limits?: LimitFigures;
  check: CheckVerdict;
  /** What draws tell of it, where they decide the verdict. */
  drawn?: Drawn;
  problem?: Problem;
  /** Hangs on an optional input of its own cell that was left blank: nothing is asked for, nothing is wrong. */
  idle?: boolean;
}

/** Something that the cell says about itself: outside its range of validity, or an assumption worth a look. */
export interface Remark {
  grade: 'error' | 'caution';
  message: string;
  /** Told on paper too: it is of the part, not of the entry. */
  paper?: true;
}

/** A question about an entry that reads well but is probably not what was meant. */
export interface Slip {
  key: string;
  field: string;
  message: string;
  /** Entry offered in its place. */
  offer?: string;
  /** How far the figure of the line lies off for it, SI; where that can be told. */
  cost?: number;
}

export interface CellResult {
  id: string;
  /** It belongs to a way that is not taken, and counts no more: the way taken in its place. */
  aside?: string;
  outputs: Record<string, OutputResult>;
  /** Problems of the cell's own texts, with spans: for underlining. */
  problems: Problem[];
  remarks: Remark[];
  slips: Slip[];
  /** Decimal echo of a fraction, size of a drill ... by field. */
  echoes: Record<string, string>;
  /** Ids of cells this one refers to, directly. */
  feeds: string[];
}

export interface SheetResults {
  rev: number;
  /** Changed cells only, except in the first answer of a view. */
  cells: CellResult[];
  gone: string[];
}
