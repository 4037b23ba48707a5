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
export const sayMessage = (message: string): string => outsideQuotes(message, say);
