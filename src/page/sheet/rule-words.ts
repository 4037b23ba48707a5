import type { DecisionRule } from '../../../shared/sheet/format.ts';

/** Decision rules by the edition they follow. */
export const RULE_WORDS: Record<DecisionRule, string> = {
  'iso14253-2013': 'ISO 14253-1:2013, expanded uncertainty k = 2',
  'iso14253-2017': 'ISO 14253-1:2017, 95 % conformance',
  'worst-case': 'worst case',
  simple: 'bare figure',
};
