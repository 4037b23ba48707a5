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
