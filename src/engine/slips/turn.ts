import type { Slipway } from './guess.ts';
import { shifted } from './shifted.ts';

/** One turn of a micrometer's thimble, SI (common practice, no source): 40 threads an inch, or 0.5 mm. */
const TURN = { in: 0.000635, mm: 0.0005 } as const;

/** A micrometer read one turn of its thimble out. */
export const turn: Slipway = (asked) =>
  [TURN[asked.datum.system], -TURN[asked.datum.system]].map((shift) => ({
    slip: 'turn',
    value: asked.value + shift,
    reach: Math.abs(shift) * 0.08,
    question: `Is the micrometer read one turn out, by ${asked.datum.system === 'in' ? '0.025 in' : '0.5 mm'}?`,
    offer: () => shifted(asked, shift),
  }));
