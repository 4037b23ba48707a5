import { CELL_FIELDS } from './cell-fields.ts';
import { fieldAtPath, wordsAtPath } from './field.ts';
import { SHEET_FIELDS } from './sheet-fields.ts';

/** What fields and their values are called: by undo, by the history, beside another sheet, in messages. */

/** Of a line, by path in the file form: `lower limit`, `housing` of an input, `lower limit of close_in` of an output. */
export const fieldWords = (path: string): string => wordsAtPath(CELL_FIELDS, path);

/** Of the sheet: `title block, drawn by`, `lengths shown in`. */
export const sheetFieldWords = (path: string): string => {
  const words = wordsAtPath(SHEET_FIELDS, path);
  return path.startsWith('title.') ? `title block, ${words}` : words;
};

/** A value for people; `values` are the words of an enumeration. */
function valueWords(value: unknown, values: Readonly<Record<string, string>> = {}): string {
  if (value === undefined || value === '' || value === false) return 'nothing';
  if (value === true) return 'yes';
  if (typeof value === 'number') return String(value);
  if (typeof value === 'string') return Object.hasOwn(values, value) ? values[value]! : value;
  if (Array.isArray(value) && value.every((item) => typeof item === 'string')) return value.join(', ');
  if (Array.isArray(value)) return `${value.length} of them`;
  if (typeof value === 'object' && value !== null && 'title' in value) return String(value.title);
  return 'set';
}

export const cellValueWords = (path: string, value: unknown): string =>
  valueWords(value, fieldAtPath(CELL_FIELDS, path)?.values);

export const sheetValueWords = (path: string, value: unknown): string =>
  valueWords(value, fieldAtPath(SHEET_FIELDS, path)?.values);
