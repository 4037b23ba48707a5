import type { CheckState, CheckVerdict } from '../../../shared/check.ts';

/** What a state means for the work, from the one that stops it to the one that asks nothing. */
export type Standing = 'misses' | 'doubt' | 'waiting' | 'edge' | 'holds' | 'none';

const STANDING: Record<CheckState, Standing> = {
  holds: 'holds',
  'proven in': 'holds',
  'holds, near the edge': 'edge',
  'proven in, near the edge': 'edge',
  'may miss': 'doubt',
  'not proven': 'doubt',
  misses: 'misses',
  'proven out': 'misses',
  waiting: 'waiting',
  'no limits': 'none',
};

export const standingOf = (state: CheckState): Standing => STANDING[state];

/** A check that asks for something to be done, in the order it should be looked at. */
export const ORDER: readonly Standing[] = ['misses', 'doubt', 'waiting', 'edge', 'holds', 'none'];

/** Said of the part, not of the plan. */
export const isPartState = (state: CheckState): boolean =>
  state.startsWith('proven') || state === 'not proven';

/** The verdict that stands for a line: as new where it holds, else the one in service where it is better. */
export const worstOf = (check: CheckVerdict): Standing => standingOf(check.asNew.state);
