import type { SyntaxNode, Tree } from '@lezer/common';
import type { LRParser } from '@lezer/lr';
import { parser } from './entry.grammar';

export type Top = 'Literal' | 'Formula' | 'Cut';

const made = new Map<string, LRParser>();

/** Parser of one top of the grammar, for a decimal point or comma. */
export const parserFor = (top: Top, decimal: '.' | ',' = '.'): LRParser => {
  const key = top + decimal;
  let found = made.get(key);
  if (!found) {
    found = parser.configure({ top, ...(decimal === ',' ? { dialect: 'comma' } : {}) });
    made.set(key, found);
  }
  return found;
};

export const firstError = (tree: Tree): SyntaxNode | undefined => {
  let found: SyntaxNode | undefined;
  tree.iterate({
    enter: (node) => {
      if (!found && node.type.isError) found = node.node;
      return !found;
    },
  });
  return found;
};

export const isFormula = (text: string): boolean => text.trimStart().startsWith('=');

/**
 * Same length, so that every span holds in the text as typed. Line breaks part stations of readings and mean nothing
 * at the ends or in a formula; a tab between two numbers, as pasted from a table, parts readings.
 */
export const cleaned = (text: string): string => {
  if (isFormula(text)) return text.replace(/[\r\n]/g, ' ');
  return text
    .replace(/\r\n/g, ' \n')
    .replace(/\r/g, '\n')
    .replace(/^[\s;|,]*\n|[\s;|]+$/g, (blank) => ' '.repeat(blank.length))
    .replace(/(?<=[\d"'A-Za-z])\t(?=[-+.,\d])/g, ';');
};
