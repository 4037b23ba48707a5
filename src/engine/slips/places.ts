import type { Asked, Guess } from './guess.ts';

/** How often readings are written to so many places (common practice, no source). */
const USUAL: Readonly<Record<string, readonly number[]>> = {
  in: [0.01, 0.01, 0.03, 0.3, 0.54, 0.1, 0.01],
  mm: [0.02, 0.03, 0.45, 0.44, 0.05, 0.01],
};
const SELDOM = 0.003;
/** What is usual weighs as so many readings of the same list. */
const WEIGHT = 0.3;

const placesIn = (text: string): number => /[.,](\d*)$/.exec(text)?.[1]?.length ?? 0;

/**
 * What the number of places says for a guess, as a logarithm of odds: who reads a list to three places wrote none of it to
 * two, unless a digit is missing.
 */
export function placesOdds({ datum, indices }: Asked, { text }: Guess): number {
  const index = indices[0] as number;
  const literal = datum.literals[index];
  const usual = USUAL[literal?.unit ?? ''];
  if (text === undefined || !usual || literal?.digits === undefined) return 0;
  const others = datum.literals.filter((one, i) => i !== index && one.unit === literal.unit);
  const share = (places: number): number =>
    (others.filter((one) => one.digits === places).length + WEIGHT * (usual[places] ?? SELDOM)) /
    (others.length + WEIGHT);
  return Math.log(share(placesIn(text)) / share(literal.digits));
}
