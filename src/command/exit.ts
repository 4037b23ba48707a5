import type { CheckState } from '../../shared/checks/check.ts';

/** What a run ends with, for scripts. */
export const EXIT = {
  /** Every check holds or is proven in, near the edge or not. */
  holds: 0,
  /** Some check may miss, misses, is not proven, is proven out or waits. */
  open: 1,
  /** A file, an entry or the command itself is in error. */
  error: 2,
} as const;

export type Exit = (typeof EXIT)[keyof typeof EXIT];

const SETTLED: ReadonlySet<CheckState> = new Set<CheckState>([
  'holds',
  'holds, near the edge',
  'proven in',
  'proven in, near the edge',
  'no limits',
]);

/** True where a check asks for nothing to be done. */
export const isSettled = (state: CheckState): boolean => SETTLED.has(state);

export const worst = (exits: readonly Exit[]): Exit => Math.max(EXIT.holds, ...exits) as Exit;
