import type { CheckVerdict } from '../../../shared/checks/check.ts';
import { type CheckState, gradeOf, isPartState, isWithoutFigure } from '../../../shared/checks/states.ts';
import { inServiceWords } from '../../../shared/checks/words.ts';

/** What a state means for the work, from the one that stops it to the one that asks nothing. */
export type Standing = 'misses' | 'doubt' | 'waiting' | 'edge' | 'holds' | 'none';

const STANDING = { in: 'holds', near: 'edge', open: 'doubt', out: 'misses' } as const;

export const standingOf = (state: CheckState): Standing => {
  const grade = gradeOf(state);
  return grade ? STANDING[grade] : state === 'no limits' ? 'none' : 'waiting';
};

/** A check that asks for something to be done, in the order it should be looked at. */
export const ORDER: readonly Standing[] = ['misses', 'doubt', 'waiting', 'edge', 'holds', 'none'];

/** One text of classes: one that changes beside a list of others would wipe those out. */
export const verdictClass = (state: CheckState): string =>
  `verdict ${standingOf(state)}${isPartState(state) ? ' part' : ''}`;

export { leading } from '../../../shared/checks/leading.ts';

/** What else is to be said of service, once the leading verdict is said: the same word is not said twice. */
export const serviceWords = (check: CheckVerdict): string | undefined => {
  const { asNew, inService } = check;
  if (!inService || isWithoutFigure(asNew.state)) return undefined;
  if (asNew.state === 'no limits') return 'in service';
  if (inService.state === asNew.state) return 'in service too';
  return inServiceWords(inService, check.where);
};

/** How a number of checks of plans and parts together is said, and the sign beside it. */
export const COUNTED: Record<Exclude<Standing, 'none'>, { one: string; many: string; sign: CheckState }> = {
  misses: { one: 'misses', many: 'miss', sign: 'misses' },
  doubt: { one: 'may miss', many: 'may miss', sign: 'may miss' },
  waiting: { one: 'without a figure', many: 'without a figure', sign: 'waiting' },
  edge: { one: 'holds near the edge', many: 'hold near the edge', sign: 'holds, near the edge' },
  holds: { one: 'holds', many: 'hold', sign: 'holds' },
};
