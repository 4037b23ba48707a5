import type { SheetFile } from '../../shared/sheet/format.ts';

/** A line end of the file within what is printed on one line: the rest of it would look like a line of the program. */
const BREAK = /[\t\n\v\f\r\u0085\u2028\u2029]/g;

/** The text without line ends: they are written out. */
export const onOneLine = (text: string): string =>
  text.replace(BREAK, (sign) => `⟨U+${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}⟩`);

/** Entries, in which a line end is a blank like any other and by which figures go, and ids, told apart by every character. */
const AS_THEY_ARE: ReadonlySet<string> = new Set([
  'id',
  'entry',
  'entries',
  'inputs',
  'example',
  'examples',
  'limits',
  'tolerance',
  'at',
  'issued',
]);

/** A sheet whose names, labels and other words stand on one line each. */
export const wordsOnOneLine = (file: SheetFile): SheetFile => {
  const within = (value: unknown): unknown => {
    if (typeof value === 'string') return onOneLine(value);
    if (Array.isArray(value)) return value.map(within);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(
      Object.entries(value).map(([key, inner]) => [
        onOneLine(key),
        AS_THEY_ARE.has(key) ? inner : within(inner),
      ]),
    );
  };
  return within(file) as SheetFile;
};
