import { type Slipway, USUAL } from './guess.ts';
import { shifted } from './shifted.ts';

/** Step between the frames of a set of micrometers and the rods of an inside one, SI (common practice, no source). */
const STEP = { in: 0.0254, mm: 0.025 } as const;

/** A reading with the frame or the rod of the next size. */
export const frame: Slipway = (asked) =>
  [STEP[asked.datum.system], -STEP[asked.datum.system]].map((shift) => ({
    slip: 'frame',
    value: asked.value + shift,
    share: USUAL / 2,
    question: `Is the frame or the rod the wrong one, by ${asked.datum.system === 'in' ? '1 in' : '25 mm'}?`,
    offer: () => shifted(asked, shift),
  }));
