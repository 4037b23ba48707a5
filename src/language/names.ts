/** Names of cells in texts: which are allowed, where they stand, and how to swap them. */
import { type Problem, problem } from '../../shared/problem.ts';
import { unitSymbols } from '../../shared/units/units.ts';
import { generalFunctions } from './functions/functions.ts';
import { cleaned, isFormula, treeOf } from './grammar/tree.ts';
import { sizeProblem } from './syntax/size.ts';
import { short } from './syntax/wording.ts';
import { edited } from './values/reading.ts';

const FIRST = String.raw`A-Za-z_\u00b5\u00c0-\u00d6\u00d8-\u00f6\u00f8-\u024f\u0370-\u1fff\u3040-\ud7ff`;
const NAME = new RegExp(`^[${FIRST}][${FIRST}0-9\\u0300-\\u036f]*$`);
const MAX_NAME = 60;
const functionNames: ReadonlySet<string> = new Set(generalFunctions.map((fn) => fn.name));

/** What keeps a name from being one; undefined when it is good. Trade functions are told from names by their parenthesis. */
export const cellNameProblem = (name: string): Problem | undefined => {
  const said = `\`${short(name)}\``;
  if (name === '') return problem('syntax', 'A name is missing.');
  if (name.length > MAX_NAME) {
    return problem('too-big', `A name has at most ${MAX_NAME} characters; this one has ${name.length}.`);
  }
  if (/^\d/.test(name)) return problem('syntax', `${said} begins with a digit: a name begins with a letter.`);
  if (!NAME.test(name.normalize('NFC'))) {
    return problem('syntax', `${said} cannot be a name: use letters, digits and _, without blanks or signs.`);
  }
  if (unitSymbols.has(name))
    return problem('syntax', `${said} is a unit, so it cannot be a name: lengthen it, as in ${name}_1.`);
  if (functionNames.has(name)) return problem('syntax', `${said} is a function, so it cannot be a name.`);
  return undefined;
};

export const isValidCellName = (name: string): boolean => cellNameProblem(name) === undefined;

/** A cell named in a text. The span covers name and output; `name` is as it stands there, `{c12}` with its braces. */
export interface NamePlace {
  name: string;
  output?: string;
  from: number;
  to: number;
}

/** Every cell named in a formula, in order, faulty formulas included; none in any other entry. */
export const referencesIn = (text: string): NamePlace[] => {
  // What is too big to be read is not parsed either: thousands of operators in a row overrun the parser.
  if (!isFormula(text) || sizeProblem(text)) return [];
  const found: NamePlace[] = [];
  treeOf('Formula', cleaned(text)).tree.iterate({
    enter: (node) => {
      if (node.name !== 'CellName') return;
      const name = text.slice(node.from, node.to);
      const whole = node.node.parent;
      const outputNode = whole?.name === 'Output' ? whole.getChild('OutputName') : null;
      const output = outputNode ? text.slice(outputNode.from, outputNode.to) : undefined;
      found.push({ name, ...(output ? { output } : {}), from: node.from, to: outputNode?.to ?? node.to });
    },
  });
  return found;
};

/** `text` with its cell names put through `rename`; undefined leaves a name as it is. Nothing else changes. */
export const renameIn = (text: string, rename: (name: string) => string | undefined): string =>
  edited(
    text,
    referencesIn(text).flatMap(({ name, from }) => {
      const insert = rename(name);
      return insert === undefined || insert === name ? [] : [{ from, to: from + name.length, insert }];
    }),
  );
