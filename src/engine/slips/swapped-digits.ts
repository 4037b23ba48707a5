import type { Slipway } from './guess.ts';
import { retyped } from './retyped.ts';

/**
 * Two neighbouring digits changed over; the point stays where it is. A nought that came to stand in front was not written:
 * `10.597` may have been `100.597`.
 */
export const swappedDigits: Slipway = retyped(
  'swapped-digits',
  'Are two digits changed over?',
  (text) => {
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
  },
  (digits) => digits - 1,
);
