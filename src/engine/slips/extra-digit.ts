import type { Slipway } from './guess.ts';
import { retyped } from './retyped.ts';

/** A key that was pressed twice: `22.2506` may have been `2.2506`. */
export const extraDigit: Slipway = retyped(
  'extra-digit',
  'Is a digit written twice?',
  (text) =>
    [...text].flatMap((c, at) =>
      /\d/.test(c) && text[at + 1] === c ? [text.slice(0, at) + text.slice(at + 1)] : [],
    ),
  (digits) => digits,
);
