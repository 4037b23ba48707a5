import type { Literal } from '../../language/syntax/syntax.ts';
import type { Datum } from './datum.ts';
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
  const share = (places: number): number => shareOf(places, literal, datum, usual);
  return Math.log(share(placesIn(text)) / share(literal.digits));
}

/** Share of the readings that would be written to so many places, by the others of the list. */
function shareOf(places: number, literal: Literal, datum: Datum, usual: readonly number[]): number {
  let [alike, others] = [0, 0];
  for (const one of datum.literals) {
    if (one === literal || one.unit !== literal.unit) continue;
    others++;
    if (one.digits === places) alike++;
  }
  return (alike + WEIGHT * (usual[places] ?? SELDOM)) / (others + WEIGHT);
}

/** No guess gains more than this by its number of places. */
export function mostOfPlaces({ datum, indices }: Asked): number {
  const literal = datum.literals[indices[0] as number];
  const usual = USUAL[literal?.unit ?? ''];
  if (indices.length !== 1 || datum.set || !usual || literal?.digits === undefined) return 0;
  return -Math.log(shareOf(literal.digits, literal, datum, usual));
}
