import type { Slip } from '../rows/results.ts';
import type { Datum } from './datum.ts';
import { scaled } from './shifted.ts';
import { fitWordOf } from './words.ts';

/** Usual interference per unit of diameter of pressed and shrunk parts (common practice, no source). */
export const INTERFERENCE_PER_DIAMETER = { low: 0.0003, high: 0.002 } as const;

/** Less than this is no interference at all: a matter of the check, not of a slip. */
const NONE = 1e-5;

const outOfRange = (ratio: number): boolean =>
  ratio > NONE && (ratio < INTERFERENCE_PER_DIAMETER.low || ratio > INTERFERENCE_PER_DIAMETER.high);

/** Asks about an interference that its diameter does not bear out; undefined where it does. */
export function interferenceQuestion(interference: number, diameter: number): string | undefined {
  const ratio = interference / diameter;
  if (!outOfRange(ratio)) return undefined;
  const times = Number((ratio * 1000).toPrecision(2));
  return `Interference is ${times} thousandths of the diameter; pressed and shrunk parts usually have 0.3 to 2. Is it meant?`;
}

/** How far off what is usual on a diameter. */
export const offUsual = (interference: number, diameter: number): number => {
  const { low, high } = INTERFERENCE_PER_DIAMETER;
  return Math.max(low * diameter - interference, interference - high * diameter);
};

/** An interference worked out the wrong way round: what it would be is as it usually is. */
export const turnedInterference = (interference: number, diameter: number): string | undefined =>
  interference < 0 && -interference / diameter > NONE && !outOfRange(-interference / diameter)
    ? 'Interference is below nothing; pressed and shrunk parts usually have as much above it. Is one size taken from the other the wrong way round?'
    : undefined;

/** An interference typed with a minus, where no limits of its own let it be below nothing. */
export function minusOf(
  datum: Datum,
  words: string,
  { lower, upper }: { lower?: number | undefined; upper?: number | undefined },
): Slip | undefined {
  const value = datum.literals[0]?.value;
  if (value === undefined || value >= 0 || datum.offset || datum.set || fitWordOf(words) !== 'interference')
    return undefined;
  if ((lower !== undefined || upper !== undefined) && value >= (lower ?? value) && value <= (upper ?? value))
    return undefined;
  const offer = scaled({ datum, indices: datum.literals.map((_, i) => i), value }, -1);
  return {
    key: `sign:${datum.field}`,
    field: datum.field,
    message: `An interference of ${datum.literals[0]?.text} is a clearance. Is the minus meant?`,
    ...(offer === undefined ? {} : { offer }),
    cost: 2 * Math.abs(value),
  };
}
