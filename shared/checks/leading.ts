import type { CheckVerdict } from './check.ts';
import type { Verdict } from './states.ts';

/** The verdict a line is known by: as new; in service where it has a wear limit and nothing else. */
export const leading = ({ asNew, inService }: CheckVerdict): Verdict =>
  asNew.state === 'no limits' && inService ? inService : asNew;
