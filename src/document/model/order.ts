/**
 * Order by fractional index: each cell holds a text, cells stand in the order of their texts (ties by id), and between
 * any two texts there is another, so that moving one cell writes one field.
 *
 * A text is a fraction in base 62 without its leading `0.` and without trailing zeros.
 */
const DIGITS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz';
const BASE = DIGITS.length;

const digit = (text: string, i: number): number => (i < text.length ? DIGITS.indexOf(text[i]!) : 0);

/**
 * A text strictly between two; `''` is the start, `undefined` the end. At an open end it steps by one digit rather than
 * halving, so that a thousand lines typed one after the other do not grow a thousand digits.
 *
 * @throws RangeError when `low` is not before `high`: nothing lies between.
 */
export function between(low: string, high: string | undefined): string {
  const end = high?.replace(/0+$/, '');
  if (end !== undefined && low.replace(/0+$/, '') >= end)
    throw new RangeError(`no place between ${low} and ${high}`);
  let out = '';
  let bounded = end !== undefined;
  for (let i = 0; ; i++) {
    const a = digit(low, i);
    const b = bounded ? digit(end!, i) : BASE;
    if (a === b) {
      out += DIGITS[a];
      continue;
    }
    if (b - a > 1) {
      const open = !bounded && i < low.length;
      return out + DIGITS[open ? a + 1 : a + Math.floor((b - a) / 2)];
    }
    // Neighbouring digits: keep the lower one and go on above the rest of `low`.
    out += DIGITS[a];
    bounded = false;
  }
}

/** `count` texts in order, all between two. */
export function spread(low: string, high: string | undefined, count: number): string[] {
  if (count <= 0) return [];
  const middle = between(low, high);
  const before = Math.floor((count - 1) / 2);
  return [...spread(low, middle, before), middle, ...spread(middle, high, count - 1 - before)];
}

export const byPlace = (a: readonly [string, string], b: readonly [string, string]): number =>
  a[0] < b[0] ? -1 : a[0] > b[0] ? 1 : a[1] < b[1] ? -1 : a[1] > b[1] ? 1 : 0;
