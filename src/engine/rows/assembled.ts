import type { Problem } from '../../../shared/problem.ts';
import type { DecisionRule, KeptValue } from '../../../shared/sheet/format.ts';
import type { RowKey } from './key.ts';
import type { RowDefinition } from './row.ts';

/** Rows that hold the limits of one output, and the margins to them, by key. */
export interface LimitPlan {
  lower?: RowKey;
  upper?: RowKey;
  wear?: RowKey;
  /** The least and the greatest that are held to them, where the value itself is not. */
  least?: RowKey;
  greatest?: RowKey;
  /** least - lower, upper - greatest. */
  lowerMargin?: RowKey;
  upperMargin?: RowKey;
  /** The wear limit above the value, and below it: which one counts is known when the limits are. */
  wearAbove?: RowKey;
  wearBelow?: RowKey;
  metalOn?: 'low' | 'high';
  rule?: DecisionRule;
}

/** What one output of a cell shows, by row key. */
export interface OutputPlan {
  name: string;
  quantity?: string;
  label?: string;
  display?: string;
  planned?: RowKey;
  measured?: RowKey;
  difference?: RowKey;
  replanned?: RowKey;
  stands: 'planned' | 'measured' | 'issued';
  limits?: LimitPlan;
  /** A part that was just made is judged as new only. */
  justMade: boolean;
  /** Source row whose ends are the tolerance the size is cut to. */
  tolerance?: RowKey;
  /** Source row whose ends are the tolerance of the plan, whoever set it: what the part came out at is held against it. */
  ownTolerance?: RowKey;
  /** Side on which a miss while cutting can still be reworked. */
  metalOn?: 'low' | 'high';
  /** True for a set of figures that belong to the readings and are shown unfolded only. */
  aside?: boolean;
}

interface ValidityPlan {
  /** Row that is TRUE while the cell may be believed, or (grade error) no error. */
  key: RowKey;
  grade: 'error' | 'caution';
  otherwise: string;
}

/** Usual range of an input: a value outside it is questioned, not refused. */
interface UsualRange {
  key: RowKey;
  label: string;
  low: number;
  high: number;
  /** The range as the library writes it. */
  words: string;
}

/** A cell turned into rows, and what of them to show. */
export interface AssembledCell {
  id: string;
  rows: RowDefinition[];
  outputs: OutputPlan[];
  validity: ValidityPlan[];
  usual: UsualRange[];
  /** Problems of the cell's own texts, with field and span. */
  problems: Problem[];
  /** Things worth saying that need no computing. */
  cautions: string[];
  echoes: Record<string, string>;
  /** Table values it was computed with. */
  tables: KeptValue[];
  /** Names its texts mention, known or not: the cell is assembled again when one of them comes, goes or changes type. */
  mentions: Set<string>;
  /** Ids of the cells among them. */
  feeds: Set<string>;
}
