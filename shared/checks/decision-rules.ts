import type { DecisionRule } from '../sheet/format.ts';

/** Decision rules by the edition they follow, for people. */
export const RULE_WORDS: Readonly<Record<DecisionRule, string>> = {
  'iso14253-2013': 'ISO 14253-1:2013, expanded uncertainty k = 2',
  'iso14253-2017': 'ISO 14253-1:2017, 95 % conformance',
  'worst-case': 'worst case',
  simple: 'no allowance for measuring error',
};

/** A rule that a line goes by in place of the sheet's, to be told beside its verdict. */
export const ownRule = (rule: DecisionRule, ofSheet: DecisionRule): string | undefined =>
  rule === ofSheet ? undefined : `${rule === 'simple' ? 'with' : 'by'} ${RULE_WORDS[rule]}`;
