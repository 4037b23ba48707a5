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
  const cursor = tree.cursor();
  do {
    if (cursor.type.isError) return cursor.node;
  } while (cursor.next());
  return undefined;
};

/** A stroke parts fractions and units, a comma is doubtful, and a digit behind a letter is a power, a class or a name. */
const DIGITS_TELL = /[/,]|[^\d.\s+\-\u2212\u2013±(;|=*×]\d/;

/** A text with every digit as 0, where which digits stand in it says nothing of how it is built; else undefined. */
export const shapeOf = (text: string, decimal?: '.' | ','): string | undefined =>
  decimal === ',' || DIGITS_TELL.test(text) ? undefined : text.replace(/\d/g, '0');

const KEPT = 500;

/** Trees of texts without error, by top and shape. */
const shapes = new Map<string, Tree>();

/** The text last parsed by each parser: what reads one text after another asks for the same tree again. */
const last = new Map<string, { text: string; tree: Tree; sound: boolean }>();

/**
 * Tree of a text, and whether it is without error. Of texts of one shape the first is parsed: another number typed in the
 * same way has the same tree. A text with errors costs a parser most, so its tree serves every reader of it.
 */
export const treeOf = (top: Top, text: string, decimal?: '.' | ','): { tree: Tree; sound: boolean } => {
  const shape = shapeOf(text, decimal);
  const key = shape === undefined ? undefined : `${top} ${shape}`;
  const known = key === undefined ? undefined : shapes.get(key);
  if (known) return { tree: known, sound: true };
  const by = `${top}${decimal ?? '.'}`;
  const before = last.get(by);
  if (before?.text === text) return before;
  const tree = parserFor(top, decimal).parse(text);
  const sound = firstError(tree) === undefined;
  last.set(by, { text, tree, sound });
  if (sound && key !== undefined) {
    if (shapes.size >= KEPT) shapes.clear();
    shapes.set(key, tree);
  }
  return { tree, sound };
};

export const isFormula = (text: string): boolean => text.trimStart().startsWith('=');

/**
 * Same length, so that every span holds in the text as typed. Line breaks part stations of readings and mean nothing
 * at the ends or in a formula; a tab between two numbers, as pasted from a table, parts readings. The point behind an
 * abbreviated unit (2.25 in.) says nothing, and 20 deg C is 20 degC.
 */
export const cleaned = (text: string): string => {
  const written = text
    .replace(/(?<=\d[ \u00a0]?(?:in|ft|lbs?|oz|mm|cm))\.(?=$|[\s;|,+±)-])/gi, ' ')
    .replace(/(?<=\d[ \u00a0]?)deg([ \u00a0])([CF])(?![\p{L}\p{N}_])/gu, 'deg$2$1');
  if (isFormula(text)) return written.replace(/[\r\n]/g, ' ');
  return written
    .replace(/\r\n/g, ' \n')
    .replace(/\r/g, '\n')
    .replace(/^[\s;|,]*\n|[\s;|]+$/g, (blank) => ' '.repeat(blank.length))
    .replace(/(?<=[\d"'A-Za-z])\t(?=[-+.,\d])/g, ';');
};
