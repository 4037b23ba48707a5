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

/** As a logarithm, no less than it gains by ending in a five where all others do. */
const FIVES = 6;

const placesIn = (text: string): number => /[.,](\d*)$/.exec(text)?.[1]?.length ?? 0;

/**
 * What the number of places says for a guess, as a logarithm of odds: who reads a list to three places wrote none of it to
 * two, unless a digit is missing.
 */
export function placesOdds({ datum, indices, beside = [] }: Asked, { text }: Guess): number {
  const index = indices[0] as number;
  const literal = datum.literals[index];
  const usual = USUAL[literal?.unit ?? ''];
  if (text === undefined || !usual || literal?.digits === undefined) return 0;
  const share = (places: number): number => shareOf(places, literal, datum, usual, beside);
  return Math.log(share(placesIn(text)) / share(literal.digits)) + fivesOdds(text, literal, datum);
}

const endsInFive = (text: string): boolean => /\d*[05]\D*$/.test(text);

/** Share of those who read to half a division, five steps of the last figure (common practice, no source). */
const IN_FIVES = 0.15;

/** Who reads a gauge to five of its steps writes nothing between; nobody else minds what it ends in. */
function fivesOdds(text: string, literal: Literal, datum: Datum): number {
  if (placesIn(text) !== literal.digits) return 0;
  const others = datum.literals.filter((one) => one !== literal && one.digits === literal.digits);
  if (others.length < 3 || !others.every((one) => endsInFive(one.text))) return 0;
  const is = IN_FIVES / (IN_FIVES + (1 - IN_FIVES) * 0.2 ** others.length);
  const figure = (one: string): number => (endsInFive(one) ? is / 2 : 0) + (1 - is) / 10 + 1e-3;
  return Math.log(figure(text) / figure(literal.text));
}

/** Share of the readings that would be written to so many places, by the others of the list and of the lines it goes with. */
function shareOf(
  places: number,
  literal: Literal,
  datum: Datum,
  usual: readonly number[],
  beside: readonly Literal[],
): number {
  let [alike, others] = [0, 0];
  for (const one of datum.literals.length > 2 ? datum.literals : [...datum.literals, ...beside]) {
    if (one === literal || one.unit !== literal.unit) continue;
    others++;
    if (one.digits === places) alike++;
  }
  const share = (alike + WEIGHT * (usual[places] ?? SELDOM)) / (others + WEIGHT);
  // Somebody who writes no noughts at the end writes one reading in ten to a place less.
  const all = [...datum.literals, ...beside].map((one) => one.digits ?? 0);
  const isTrimmed = trims(datum) && others > 0 && places < Math.max(...all);
  return isTrimmed ? Math.max(share, TRIMMED) : share;
}

/** Share of the readings that end in a nought, by how many leave it out (common practice, no source). */
const TRIMMED = 0.1 / 6;

/** No reading of the list shows a nought behind its point. */
const trims = ({ literals }: Datum): boolean => !literals.some(({ text }) => /[.,]\d*0(?!\d)/.test(text));

/** No guess gains more than this by its number of places. */
export function mostOfPlaces({ datum, indices, beside = [] }: Asked): number {
  const literal = datum.literals[indices[0] as number];
  const usual = USUAL[literal?.unit ?? ''];
  if (indices.length !== 1 || datum.set || !usual || literal?.digits === undefined) return 0;
  return FIVES - Math.log(shareOf(literal.digits, literal, datum, usual, beside));
}
