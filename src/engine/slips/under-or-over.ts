import type { Slip } from '../rows/results.ts';
import type { Datum } from './datum.ts';
import type { Surface } from './words.ts';

/** `20 over` on a journal, `20 under` on a bore: a shaft is ground under size, a bore is cut over size. */
export function underOrOver(datum: Datum, part: Surface | undefined, words = ''): Slip | undefined {
  const value = datum.literals[0]?.value;
  if (!datum.offset || value === undefined || value === 0) return undefined;
  const under = value < 0;
  const [saysUnder, saysOver] = [/\bunder/.test(words), /\bover/.test(words)];
  const said = saysUnder === saysOver ? undefined : saysUnder;
  // The label says which way more plainly than what kind of part it is.
  if (said === undefined ? !part || under === (part === 'shaft') : under === said) return undefined;
  const offer = datum.text.replace(/\b(under|over|u\/s|o\/s)/i, under ? 'over' : 'under');
  const what =
    said === undefined
      ? `A ${part} is cut ${part === 'shaft' ? 'under' : 'over'} size`
      : `The label says ${said ? 'under' : 'over'} size`;
  return {
    key: `under-over:${datum.field}`,
    field: datum.field,
    message: `${what}, and this is ${under ? 'under' : 'over'}. Is ${under ? 'over' : 'under'} meant?`,
    ...(offer === datum.text ? {} : { offer }),
    cost: 2 * Math.abs(value),
  };
}
