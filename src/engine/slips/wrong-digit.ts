import type { Slipway } from './guess.ts';
import { retyped } from './retyped.ts';

/** One digit for another, as the next key or a figure misread leaves it. */
export const wrongDigit: Slipway = retyped(
  'wrong-digit',
  'Is one digit wrong?',
  (text) =>
    [...text].flatMap((c, at) =>
      /\d/.test(c)
        ? [...'0123456789']
            .filter((put) => put !== c)
            .map((put) => text.slice(0, at) + put + text.slice(at + 1))
        : [],
    ),
  (digits) => 9 * digits,
);
