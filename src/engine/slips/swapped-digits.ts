import { toSI } from '../../../shared/units/unit.ts';
import { findUnit } from '../../../shared/units/units.ts';
import type { Asked, Guess, Slipway } from './guess.ts';
import { divisionSpans, numberSpan, withDivisions } from './rewrite.ts';

/** Share of the readings with two digits changed over (common practice, no source). */
const SWAPPED = 1 / 300;

/** Two neighbouring digits of one reading changed over. */
export const swappedDigits: Slipway = (asked) => {
  const { datum, indices } = asked;
  const index = indices[0];
  if (index === undefined || indices.length !== 1) return [];
  return datum.set ? ofDivision(asked, index) : ofNumber(asked, index);
};

const guess = (value: number, offer: () => string | undefined): Guess => ({
  slip: 'swapped-digits',
  value,
  reach: 0,
  share: SWAPPED,
  question: 'Are two digits changed over?',
  offer,
});

/**
 * Every way to change two neighbouring digits over; the point stays where it is. A nought that came to stand in front was
 * not written: `10.597` may have been `100.597`.
 */
function swaps(text: string): string[] {
  const places = [...text].flatMap((c, i) => (/\d/.test(c) ? [i] : []));
  const found: string[] = [];
  for (let i = 0; i + 1 < places.length; i++) {
    const [a, b] = [places[i] as number, places[i + 1] as number];
    if (text[a] === text[b]) continue;
    const digits = [...text];
    [digits[a], digits[b]] = [digits[b] as string, digits[a] as string];
    found.push(digits.join(''));
  }
  if (/^[1-9]\d*[.,]/.test(text)) found.push(`${text[0]}0${text.slice(1)}`);
  return found;
}

function ofNumber({ datum }: Asked, index: number): Guess[] {
  const literal = datum.literals[index];
  const span = literal && numberSpan(datum, literal);
  const unit = findUnit(literal?.unit ?? '');
  if (!span || !unit) return [];
  const text = datum.text.slice(span.from, span.to);
  if (!/^\d*[.,]?\d+$/.test(text)) return [];
  return swaps(text).map((other) =>
    guess(
      toSI(Number(other.replace(',', '.')), unit),
      () => datum.text.slice(0, span.from) + other + datum.text.slice(span.to),
    ),
  );
}

function ofDivision({ datum }: Asked, index: number): Guess[] {
  const set = datum.set;
  const span = set && divisionSpans(datum, set)?.[index];
  if (!set || !span) return [];
  return swaps(span.text).map((other) =>
    guess(set.size.value + Number(other.replaceAll(' ', '')) * set.division.value, () =>
      withDivisions(datum, set, new Map([[index, other]])),
    ),
  );
}
