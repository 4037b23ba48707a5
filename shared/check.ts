import type { DecisionRule } from './sheet/format.ts';

/** Verdict words; the first three columns of the table in the design. See `judge` for when each applies. */
export type PlanState = 'holds' | 'holds, near the edge' | 'may miss' | 'misses';
export type PartState = 'proven in' | 'proven in, near the edge' | 'not proven' | 'proven out';
export type CheckState = PlanState | PartState | 'no limits' | 'waiting';

export interface Verdict {
  state: CheckState;
  /** Where it misses or may miss: the limit concerned, and whether metal is still there to take off. */
  at?: 'lower' | 'upper' | 'wear';
  side?: 'metal on' | 'metal gone';
  /** By how much the nearest limit is missed (positive: outside) or kept (negative), SI; nominal to limit. */
  by?: number;
}

export interface CheckVerdict {
  /** Against the limits for a new part; the only verdict where there is no wear limit. */
  asNew: Verdict;
  /** Against the wear limit, for a part in service. Absent where there is none, or the part was just made. */
  inService?: Verdict;
  /** The rule the guard band followed. */
  rule: DecisionRule;
  /** One line for people: `not proven as new; proven serviceable`. */
  words: string;
}
