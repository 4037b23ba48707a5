import { type Slipway, USUAL } from './guess.ts';
import { shifted } from './shifted.ts';

/** One turn of a micrometer's thimble, SI (common practice, no source): 40 threads an inch, or 0.5 mm. */
const TURN = { in: 0.000635, mm: 0.0005 } as const;

/** One turn, two, and the four from one figure of the sleeve to the next. */
const TURNS = [
  { turns: 1, often: 1, said: 'one turn', in: '0.025 in', mm: '0.5 mm' },
  { turns: 2, often: 1 / 2, said: 'two turns', in: '0.050 in', mm: '1 mm' },
  { turns: 4, often: 1 / 2, said: 'four turns', in: '0.100 in', mm: '2 mm' },
] as const;

/** A micrometer read whole turns of its thimble out. */
export const turn: Slipway = (asked) => [...turned(asked), ...figured(asked)];

/** One figure of a thimble or of a beam misread, in millimetres; in inches that is four turns. */
const figured: Slipway = (asked) =>
  asked.datum.system === 'in' || asked.datum.set
    ? []
    : [1e-4, -1e-4].map((shift) => ({
        slip: 'turn',
        value: asked.value + shift,
        share: asked.indices.length === asked.datum.literals.length ? USUAL : (2 * USUAL) / 3,
        question: 'Is the figure on the scale misread, by 0.1 mm?',
        offer: () => shifted(asked, shift),
      }));

const turned: Slipway = (asked) =>
  TURNS.flatMap(({ turns, often, said, in: inches, mm }) => {
    const one = TURN[asked.datum.system];
    return [turns * one, -turns * one].map((shift) => ({
      slip: 'turn',
      value: asked.value + shift,
      share: USUAL * often,
      question: `Is the micrometer read ${said} out, by ${asked.datum.system === 'in' ? inches : mm}?`,
      offer: () => shifted(asked, shift),
    }));
  });
