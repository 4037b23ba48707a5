import { type CheckState, gradeOf } from '../../shared/checks/states.ts';

/** What a run ends with, for scripts. */
export const EXIT = {
  /** Every check holds or is proven in limits, near the edge or not, and no question is open. */
  holds: 0,
  /** Some check may miss, misses, is not proven, is out of limits or waits, or a question is open. */
  open: 1,
  /** A file, an entry or the command itself is in error. */
  error: 2,
} as const;

export type Exit = (typeof EXIT)[keyof typeof EXIT];

/** True where a check asks for nothing to be done. */
export const isSettled = (state: CheckState): boolean =>
  state === 'no limits' || gradeOf(state) === 'in' || gradeOf(state) === 'near';

export const worst = (exits: readonly Exit[]): Exit => Math.max(EXIT.holds, ...exits) as Exit;
