import { usesComma } from './decimal-mark.ts';
import { say } from './words.ts';

/** Names of cells, what was typed and formulas: quoted in a message as they are. */
const QUOTED = /(`[^`]*`|"[^"]*"|=\s*\S+)/u;

/** A message changed in its own words alone. */
export const outsideQuotes = (message: string, change: (text: string) => string): string =>
  message
    .split(QUOTED)
    .map((part, i) => (i % 2 === 0 ? change(part) : part))
    .join('');

/** What the program says of an entry, in the words the user prefers; names in it keep theirs. */
export const sayMessage = (message: string): string =>
  usesComma() ? withComma(outsideQuotes(message, say)) : outsideQuotes(message, say);

/** Figures with the mark the user writes; what has further points is no figure. */
const withComma = (message: string): string =>
  message.replace(/(?<![\w.])(\d+)\.(\d+)(?![\w]*\.\d)/g, '$1,$2');
