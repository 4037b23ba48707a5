import type { Datum } from './datum.ts';

/** So many figures are the same by chance in no two lines. */
const FIGURES = 4;

/** What a text has in common with another that was copied from it; undefined where two may well be the same by chance. */
export function readingsOf({ read, literals, offset }: Datum): string | undefined {
  if (!read || offset) return undefined;
  const figures = literals.reduce((n, { text }) => n + text.replace(/^\D*0*|\D/g, '').length, 0);
  return figures < FIGURES ? undefined : literals.map(({ value }) => value).join(' ');
}
