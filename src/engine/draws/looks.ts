import type { DecisionRule } from '../../../shared/sheet/format.ts';

/** After so many draws the verdict is looked at; what is not clear at the last stays open. */
export const LOOKS = [10_000, 50_000, 200_000] as const;

/** Standard errors by which a share must be clear of what the rule allows. */
const CLEAR = 4;

/** Share beyond a limit that is allowed: that of a normal figure beyond two standard uncertainties; 5 %. */
const ALLOWED: Partial<Record<DecisionRule, number>> = {
  'iso14253-2013': 0.022750131948179,
  'iso14253-2017': 0.05,
};

/** Share that may lie beyond a limit among so many draws for the verdict to stand: clear of what is allowed by chance. */
export const clearShare = (rule: DecisionRule, draws: number): number => {
  const p = ALLOWED[rule] ?? 0;
  return p - CLEAR * Math.sqrt((p * (1 - p)) / draws);
};
