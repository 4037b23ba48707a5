import type { Figure, Slip } from '../rows/results.ts';
import type { Surface } from './words.ts';

/** An ISO 286 class at the end of a text: `50 mm h7`, `H7`. */
const CLASS = /(?<![A-Za-z])(js|JS|zc|ZC|z[ab]|Z[AB]|cd|CD|ef|EF|fg|FG|[A-Za-z])(\d{1,2})\s*$/;

/** H7 on a shaft, h7 on a hole: capitals are for holes (ISO 286-1). `part` is hole or shaft as far as the sheet knows. */
export function holeOrShaft(
  text: string,
  field: string,
  designation: string,
  part: Surface | undefined,
  figure?: Figure,
): Slip | undefined {
  const match = text.match(CLASS);
  if (!part || !match || match.index === undefined) return undefined;
  const [whole, letters = '', grade = ''] = match;
  if (letters + grade !== designation) return undefined;
  // js and JS lie the same about the size (ISO 286-1): nothing hangs on the letter.
  if (letters.toLowerCase() === 'js') return undefined;
  const capital = letters === letters.toUpperCase();
  if (capital === (part === 'hole')) return undefined;
  const meant = (capital ? letters.toLowerCase() : letters.toUpperCase()) + grade;
  return {
    key: `hole-shaft:${field}`,
    field,
    message: `${designation} is a class for a ${capital ? 'hole' : 'shaft'}, and this is a ${part}. Is ${meant} meant?`,
    offer: text.slice(0, match.index) + meant + whole.slice(letters.length + grade.length),
    // The two classes lie as far from the size, either way (ISO 286-1).
    ...(figure ? { cost: Math.abs(figure.low + figure.high - 2 * figure.value) } : {}),
  };
}
