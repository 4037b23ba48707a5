/**
 * A formula as TeX mathematics, for the book in Markdown: the same reading as `toMathML`, in macros that every renderer
 * of TeX in Markdown has. Text is escaped throughout.
 */
import { levelOf } from '../syntax/levels.ts';
import { unwrapped } from '../syntax/parts.ts';
import type { Expr, Reference } from '../syntax/syntax.ts';
import { type Branching, branchesOf, isBranching } from './branches.ts';
import { wholeName } from './symbols.ts';

const ESCAPES: Readonly<Record<string, string>> = {
  '\\': '\\backslash ',
  '^': '\\hat{}',
  '~': '\\sim ',
  '\u2212': '-',
  '\u00a0': '~',
};

/** Text as it must stand inside `\text{}`. */
export const escapeTex = (text: string): string =>
  text.replace(/[\\^~\u2212\u00a0#$%&_{}]/g, (c) => ESCAPES[c] ?? `\\${c}`);

const upright = (text: string): string => `\\mathrm{${escapeTex(text)}}`;

/** A name as it is typed, whole and upright; an output stands behind its cell, with a point. */
export const texName = (ref: Pick<Reference, 'name' | 'output'>): string => upright(wholeName(ref));

const COMPARISONS: Readonly<Record<string, string>> = { '<=': '\\le', '>=': '\\ge', '<>': '\\ne' };
const FUNCTIONS = new Set('sin cos tan arcsin arccos arctan exp ln log min max'.split(' '));
const ARCS: Readonly<Record<string, string>> = { ASIN: 'arcsin', ACOS: 'arccos', ATAN: 'arctan' };

const fenced = (inner: string): string => `\\left(${inner}\\right)`;

const inside = (expr: Expr, least: number): string => {
  const text = toTex(expr);
  return expr.kind !== 'group' && levelOf(expr) < least ? fenced(text) : text;
};

/** Digits, a fraction or a mixed number, and the unit upright behind a thin space. */
const figure = (text: string): string => {
  const match = /^((?:\d+[ -])?\d+\/\d+|[\d.]+(?:[eE][-+]?\d+)?)\s*(.*)$/s.exec(text.trim());
  if (!match) return `\\text{${escapeTex(text)}}`;
  const [, digits = '', unit] = match;
  const fraction = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(digits);
  const exponent = /^(.*?)[eE]\+?(-?\d+)$/.exec(digits);
  let number = digits;
  if (fraction) number = `${fraction[1] ?? ''}\\frac{${fraction[2]}}{${fraction[3]}}`;
  else if (exponent) number = `${exponent[1]} \\times 10^{${exponent[2]}}`;
  return unit ? `${number}\\,\\text{${escapeTex(unit)}}` : number;
};

const power = (base: Expr, exponent: Expr): string => {
  const raised = unwrapped(exponent);
  if (raised.kind === 'literal' && raised.bare && raised.value === 0.5)
    return `\\sqrt{${toTex(unwrapped(base))}}`;
  const plain =
    base.kind === 'ref' || base.kind === 'group' || (base.kind === 'literal' && base.unit === undefined);
  const foot = plain ? `{${toTex(base)}}` : fenced(toTex(base));
  return `${foot}^{${toTex(raised)}}`;
};

const binary = ({ op, left, right }: Extract<Expr, { kind: 'binary' }>): string => {
  if (op === '/') return `\\frac{${toTex(unwrapped(left))}}{${toTex(unwrapped(right))}}`;
  if (op === '^') return power(left, right);
  if (op === '*') return `${inside(left, 2)} \\cdot ${inside(right, 3)}`;
  return `${inside(left, 1)} ${op} ${inside(right, 2)}`;
};

/** Two columns, when and then; a branch that branches again goes on below. */
const cases = (expr: Branching): string => {
  const { branches, rest } = branchesOf(expr);
  const lines = [
    ...branches.map(({ when, value }) => `${toTex(when)} & ${toTex(value)}`),
    `\\text{in any other case} & ${toTex(rest)}`,
  ];
  return `\\begin{array}{l|l} \\text{when} & \\text{then} \\\\ \\hline ${lines.join(' \\\\ ')} \\end{array}`;
};

const call = (expr: Extract<Expr, { kind: 'call' }>): string => {
  const { fn } = expr;
  if (isBranching(expr)) return cases(expr);
  const args = expr.args.map((arg) => toTex(unwrapped(arg)));
  const [first = '', second] = args;
  if (fn === 'AND' || fn === 'OR')
    return expr.args
      .map((arg) =>
        arg.kind === 'call' && (arg.fn === 'AND' || arg.fn === 'OR')
          ? fenced(toTex(arg))
          : toTex(unwrapped(arg)),
      )
      .join(` \\text{ ${fn.toLowerCase()} } `);
  if (fn === 'NOT') return `\\text{not }${fenced(first)}`;
  if (fn === 'ISBLANK') return `${first}\\text{ is blank}`;
  if (fn === 'SQRT') return `\\sqrt{${first}}`;
  if (fn === 'ABS') return `\\left|${first}\\right|`;
  if (fn === 'PI') return '\\pi';
  if (fn === 'EXP') return `e^{${first}}`;
  if (fn === 'POWER' && second !== undefined) return power(expr.args[0] as Expr, expr.args[1] as Expr);
  const name = ARCS[fn] ?? fn.toLowerCase();
  return `${FUNCTIONS.has(name) ? `\\${name}` : upright(name)}${fenced(args.join(';\\ '))}`;
};

/** The formula as TeX, without marks of mathematics around it. */
export const toTex = (expr: Expr): string => {
  switch (expr.kind) {
    case 'literal':
      return figure(expr.text);
    case 'ref':
      return texName(expr);
    case 'text':
      return `\\text{${escapeTex(expr.text)}}`;
    case 'group':
      return fenced(toTex(unwrapped(expr)));
    case 'negate':
      return `-${inside(expr.of, 3)}`;
    case 'compare':
      return `${inside(expr.left, 1)} ${COMPARISONS[expr.op] ?? expr.op} ${inside(expr.right, 1)}`;
    case 'binary':
      return binary(expr);
    case 'call':
      return call(expr);
  }
};
