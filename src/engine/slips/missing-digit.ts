import type { Slipway } from './guess.ts';
import { retyped } from './retyped.ts';

/** A digit left out, the point at its place among the others: `5.008` may have been `85.008`. */
export const missingDigit: Slipway = retyped(
  'missing-digit',
  'Is a digit missing?',
  (text) =>
    [...text, ''].flatMap((_, at) =>
      Array.from({ length: 10 }, (_, digit) => `${text.slice(0, at)}${digit}${text.slice(at)}`),
    ),
  (digits) => digits,
);
