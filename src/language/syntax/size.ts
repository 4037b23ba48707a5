import { type Problem, problem } from '../../../shared/problem.ts';
import type { Expr } from './syntax.ts';

/** What one entry may hold. The grid below refuses formulas nested more than about twice as deep. */
const MAX_CHARACTERS = 4000;
const MAX_LEVELS = 64;
const MAX_TERMS = 500;
/** Letters that an entry which is no formula has at most: those of units and words, per term and at all. */
const LETTERS = { term: 12, all: 400 };

const tooBig = (what: string, limit: number, remedy: string): Problem =>
  problem('too-big', `This entry has ${what}; at most ${limit} are read. ${remedy}`, { from: 0, to: 0 });

const SPLIT = 'Put part of it into a cell of its own and use its name here.';

/** Counts before anything is parsed, so that no text can overrun the parser. */
export const sizeProblem = (text: string): Problem | undefined => {
  if (text.length > MAX_CHARACTERS) {
    return tooBig(`${text.length} characters`, MAX_CHARACTERS, 'Was more pasted than was meant?');
  }
  let depth = 0;
  let deepest = 0;
  let terms = text.trimStart().startsWith('=') ? 0 : 1;
  let quoted = false;
  let letters = 0;
  for (const c of text) {
    if (c.toLowerCase() !== c.toUpperCase()) letters += 1;
    if (c === '"') quoted = !quoted;
    if (c === '(') deepest = Math.max(deepest, ++depth);
    else if (c === ')') depth = Math.max(0, depth - 1);
    else if (!quoted && '+-−–*×/^;,|\n<>='.includes(c)) terms += 1;
  }
  if (deepest > MAX_LEVELS) return tooBig(`parentheses nested ${deepest} levels deep`, MAX_LEVELS, SPLIT);
  // What is no value at all costs the parser most, and a value has few letters.
  if (!text.trimStart().startsWith('=') && letters > LETTERS.all + LETTERS.term * terms)
    return tooBig(
      `${letters} letters`,
      LETTERS.all + LETTERS.term * terms,
      'Is it a note? Put it into the note of the line.',
    );
  return terms > MAX_TERMS ? tooBig(`${terms} terms`, MAX_TERMS, SPLIT) : undefined;
};

const PRECEDENCE = { '+': 1, '-': 1, '*': 2, '/': 2, '^': 3 } as const;

/** Operators that group from the left and share a level: a sum of any length is one level deep. */
export const continues = (parent: Expr, left: Expr): boolean =>
  parent.kind === 'binary' &&
  left.kind === 'binary' &&
  parent.op !== '^' &&
  PRECEDENCE[parent.op] === PRECEDENCE[left.op];

/** Levels of a tree, a chain such as a + b + c counted as one. */
const levels = (expr: Expr): number => {
  switch (expr.kind) {
    case 'call':
      return 1 + expr.args.reduce((most, arg) => Math.max(most, levels(arg)), 0);
    case 'negate':
      return 1 + levels(expr.of);
    case 'group': // counted before parsing, as parentheses
      return levels(expr.of);
    case 'binary':
    case 'compare': {
      const left = levels(expr.left) - (continues(expr, expr.left) ? 1 : 0);
      return 1 + Math.max(left, levels(expr.right));
    }
    default:
      return 0;
  }
};

export const levelProblem = (expr: Expr): Problem | undefined => {
  const found = levels(expr);
  return found > MAX_LEVELS ? tooBig(`operations nested ${found} levels deep`, MAX_LEVELS, SPLIT) : undefined;
};
