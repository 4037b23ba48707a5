import type { Slip } from '../rows/results.ts';
import type { Datum } from './datum.ts';

/** No part on a bench is so long, SI (common practice, no source). */
const LONGEST = 12.7;

/** A reading written without a point that would make a part longer than any, where nothing else on the sheet speaks of it. */
export function tooLong({ field, literals, read, offset }: Datum): Slip | undefined {
  if (!read || offset) return undefined;
  const long = literals.find(({ value, text }) => value >= LONGEST && !/\d[.,]\d/.test(text));
  if (!long) return undefined;
  return {
    key: `missing-point:${field}`,
    field,
    message: `${long.text} is ${Math.round(long.value)} m, longer than any part on a bench. Is the decimal point missing?`,
    cost: long.value,
  };
}
