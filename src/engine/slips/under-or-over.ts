import type { Slip } from '../rows/results.ts';
import type { Datum } from './datum.ts';
import type { Surface } from './words.ts';

/** `20 over` on a journal, `20 under` on a bore: a shaft is ground under size, a bore is cut over size. */
export function underOrOver(datum: Datum, part: Surface | undefined): Slip | undefined {
  const value = datum.literals[0]?.value;
  if (!datum.offset || value === undefined || value === 0 || !part) return undefined;
  const under = value < 0;
  if (under === (part === 'shaft')) return undefined;
  const offer = datum.text.replace(/\b(under|over|u\/s|o\/s)/i, under ? 'over' : 'under');
  return {
    key: `under-over:${datum.field}`,
    field: datum.field,
    message: `A ${part} is cut ${part === 'shaft' ? 'under' : 'over'} size, and this is ${under ? 'under' : 'over'}. Is ${under ? 'over' : 'under'} meant?`,
    ...(offer === datum.text ? {} : { offer }),
  };
}
