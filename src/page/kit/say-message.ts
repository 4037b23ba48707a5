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

/** What of a sheet tells the label of a line by its name. */
export interface Titles {
  idOf(name: string): string | undefined;
  titleOf(id: string): string;
}

/**
 * What the program says of an entry, in the words the user prefers. A line is called by its label where its sheet is
 * given: names are for formulas. What was typed keeps its words.
 */
export const sayMessage = (message: string, sheet?: Titles): string => {
  const said = usesComma() ? withComma(outsideQuotes(message, say)) : outsideQuotes(message, say);
  return said.replace(/`([^`]*)`/g, (_, name: string) => {
    const id = sheet?.idOf(name);
    return `“${id === undefined ? name : sheet!.titleOf(id)}”`;
  });
};

/** Figures with the mark the user writes; what has further points is no figure. */
const withComma = (message: string): string =>
  message.replace(/(?<![\w.])(\d+)\.(\d+)(?![\w]*\.\d)/g, '$1,$2');
