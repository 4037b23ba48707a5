import type { CellRecord } from '../../../shared/sheet/format.ts';

/** What tells one of a set from the next: a number, a letter, the end of the machine it is at. */
const WHICH =
  /(?<=[a-z])\d+\b|\b(?:\d+|[a-z]|left|right|front|rear|first|second|third|fourth|drive|idle|inlet|exhaust)\b/g;
/** Inside and outside are no letters of a set. */
const DIAMETER = /\b[io]\.?\s?d\b\.?/g;

/** What a line is called but for what tells it from the others of its set; undefined where it is of none. */
export function setOfAlike(record: CellRecord): string | undefined {
  const words = (record.label || record.name || '').replaceAll('_', ' ').toLowerCase();
  const plain = words.replace(DIAMETER, 'diameter');
  const of = plain.replace(WHICH, '#');
  // Lines that are letters and numbers alone are told apart by them, and of no set.
  return of === plain || !/[a-z]{2}/.test(of) ? undefined : `${record.role} ${of}`;
}
