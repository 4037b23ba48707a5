import { retyped } from './retyped.ts';

/** Share of the readings with a digit left out (common practice, no source). */
const LEFT_OUT = 1 / 300;

/** A digit left out, the point at its place among the others: `5.008` may have been `85.008`. */
export const missingDigit = retyped('missing-digit', LEFT_OUT, 'Is a digit missing?', (text) =>
  [...text, ''].flatMap((_, at) =>
    Array.from({ length: 10 }, (_, digit) => `${text.slice(0, at)}${digit}${text.slice(at)}`),
  ),
);
