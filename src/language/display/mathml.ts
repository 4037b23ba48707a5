/**
 * A formula as presentation MathML (MathML Core): strokes as fractions, roots, powers, and what depends on a condition as a
 * table of two columns. With the cells' names, or with their numbers put in. The text is escaped throughout, so it may be
 * set as markup.
 */
import { levelOf } from '../syntax/levels.ts';
import { unwrapped } from '../syntax/parts.ts';
import type { Expr, Literal, Reference } from '../syntax/syntax.ts';
import { type Branching, branchesOf, isBranching } from './branches.ts';
import { escapeMarkup } from './markup.ts';
import { nameMark, wholeName } from './symbols.ts';

export interface MathOptions {
  /** What stands for a reference; its name unless given. Plain text. */
  label?: (ref: Reference) => string;
  /** Figure with its unit to stand in place of a reference; undefined leaves the name. Plain text: `2.2515 in`. */
  number?: (ref: Reference) => string | undefined;
  /** How a number of the formula itself is written; as typed unless given. Plain text. */
  literal?: (literal: Literal) => string;
}

const mo = (text: string): string => `<mo>${escapeMarkup(text)}</mo>`;
const row = (...parts: string[]): string =>
  parts.length === 1 ? (parts[0] as string) : `<mrow>${parts.join('')}</mrow>`;
const fenced = (inner: string): string => row('<mo>(</mo>', inner, '<mo>)</mo>');

/** A figure and what stands behind it: digits as a number, the unit upright after a thin space. */
const figure = (text: string): string => {
  const match = /^([-\u2212]?)((?:\d+[ -])?\d+\/\d+|[\d.,]+(?:[eE][-+]?\d+)?)\s*(.*)$/s.exec(text.trim());
  if (!match) return `<mtext>${escapeMarkup(text)}</mtext>`;
  const [, sign, digits = '', unit] = match;
  const exponent = /^(.*?)[eE]\+?(-?\d+)$/.exec(digits);
  const fraction = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(digits);
  let number = `<mn>${escapeMarkup(digits)}</mn>`;
  if (fraction) {
    const [, whole, top, bottom] = fraction;
    number = `${whole ? `<mn>${whole}</mn>` : ''}<mfrac><mn>${top}</mn><mn>${bottom}</mn></mfrac>`;
  } else if (exponent) {
    const power = (exponent[2] as string).replace('-', '\u2212');
    number = row(`<mn>${exponent[1]}</mn>`, '<mo>×</mo>', `<msup><mn>10</mn><mn>${power}</mn></msup>`);
  }
  const tail = unit ? `<mspace width="0.17em"/><mtext>${escapeMarkup(unit)}</mtext>` : '';
  return sign || tail || fraction?.[1]
    ? `<mrow>${sign ? '<mo form="prefix">\u2212</mo>' : ''}${number}${tail}</mrow>`
    : number;
};

const COMPARISONS: Readonly<Record<string, string>> = { '<=': '≤', '>=': '≥', '<>': '≠' };

const GAP = '<mspace width="0.33em"/>';

/** Functions that have a notation of their own. */
const notation = (fn: string, args: readonly string[]): string | undefined => {
  const [first = ''] = args;
  if (fn === 'SQRT') return `<msqrt>${first}</msqrt>`;
  if (fn === 'ABS') return row('<mo>|</mo>', first, '<mo>|</mo>');
  if (fn === 'PI') return '<mi>π</mi>';
  if (fn === 'EXP') return `<msup><mi>e</mi>${row(first)}</msup>`;
  if (fn === 'AND' || fn === 'OR') return row(args.join(`${GAP}<mtext>${fn.toLowerCase()}</mtext>${GAP}`));
  if (fn === 'NOT') return row('<mtext>not</mtext>', GAP, fenced(first));
  if (fn === 'ISBLANK') return row(first, GAP, '<mtext>is blank</mtext>');
  return undefined;
};

class Writer {
  constructor(private readonly options: MathOptions) {}

  write(expr: Expr): string {
    switch (expr.kind) {
      case 'literal':
        return figure(this.options.literal?.(expr) ?? expr.text);
      case 'ref':
        return this.reference(expr);
      case 'text':
        return `<mtext>${escapeMarkup(expr.text)}</mtext>`;
      case 'group':
        return fenced(this.write(unwrapped(expr)));
      case 'negate':
        return row('<mo form="prefix">\u2212</mo>', this.inside(expr.of, 3));
      case 'compare':
        return row(
          this.inside(expr.left, 1),
          mo(COMPARISONS[expr.op] ?? expr.op),
          this.inside(expr.right, 1),
        );
      case 'binary':
        return this.binary(expr);
      case 'call':
        return this.call(expr);
    }
  }

  private reference(ref: Reference): string {
    const number = this.options.number?.(ref);
    if (number !== undefined) return figure(number);
    return nameMark(this.options.label?.(ref) ?? wholeName(ref));
  }

  /** A part of an operation, with the parentheses it was typed with, or those it needs. */
  private inside(expr: Expr, least: number): string {
    const text = this.write(expr);
    const needs = expr.kind !== 'group' && (levelOf(expr) < least || (least > 1 && this.isNegative(expr)));
    return needs ? fenced(text) : text;
  }

  /** A number put in for a name may be below zero. */
  private isNegative(expr: Expr): boolean {
    return expr.kind === 'ref' && /^[-\u2212]/.test(this.options.number?.(expr) ?? '');
  }

  private binary(expr: Extract<Expr, { kind: 'binary' }>): string {
    const { op, left, right } = expr;
    if (op === '/')
      return `<mfrac>${row(this.write(unwrapped(left)))}${row(this.write(unwrapped(right)))}</mfrac>`;
    if (op === '^') return this.power(left, right);
    if (op === '*') return row(this.inside(left, 2), '<mo>·</mo>', this.inside(right, 3));
    return row(this.inside(left, 1), mo(op === '-' ? '\u2212' : '+'), this.inside(right, 2));
  }

  private power(base: Expr, exponent: Expr): string {
    const raised = unwrapped(exponent);
    if (raised.kind === 'literal' && raised.bare && raised.value === 0.5)
      return `<msqrt>${this.write(unwrapped(base))}</msqrt>`;
    const simple = base.kind === 'ref' && !this.options.number?.(base);
    const plain = base.kind === 'literal' && base.unit === undefined;
    const foot =
      simple || plain || base.kind === 'group' || base.kind === 'call'
        ? this.write(base)
        : fenced(this.write(base));
    return `<msup>${row(foot)}${row(this.write(raised))}</msup>`;
  }

  private call(expr: Extract<Expr, { kind: 'call' }>): string {
    if (isBranching(expr)) return this.cases(expr);
    const joins = expr.fn === 'AND' || expr.fn === 'OR';
    const args = expr.args.map((arg) => {
      const text = this.write(unwrapped(arg));
      // a and (b or c)
      return joins && arg.kind === 'call' && (arg.fn === 'AND' || arg.fn === 'OR') ? fenced(text) : text;
    });
    const own = notation(expr.fn, args);
    if (own !== undefined) return own;
    if (expr.fn === 'POWER' && expr.args[0] && expr.args[1]) return this.power(expr.args[0], expr.args[1]);
    return row(
      `<mi mathvariant="normal">${escapeMarkup(expr.fn.toLowerCase())}</mi>`,
      '<mo>(</mo>',
      args.join('<mo separator="true">;</mo>'),
      '<mo>)</mo>',
    );
  }

  /** Two columns, when and then; a branch that branches again goes on below. */
  private cases(expr: Branching): string {
    const { branches, rest } = branchesOf(expr);
    const line = (...cells: string[]) => `<mtr>${cells.map((cell) => `<mtd>${cell}</mtd>`).join('')}</mtr>`;
    return `<mtable columnalign="left">${line('<mtext>when</mtext>', '<mtext>then</mtext>')}${branches
      .map(({ when, value }) => line(this.write(when), this.write(value)))
      .join('')}${line('<mtext>in any other case</mtext>', this.write(rest))}</mtable>`;
  }
}

/** The inside of a formula, for more than one in a row. */
export const toMathRow = (expr: Expr, options: MathOptions = {}): string => new Writer(options).write(expr);

/** A whole `math` element. */
export const toMathML = (expr: Expr, options: MathOptions = {}): string =>
  `<math xmlns="http://www.w3.org/1998/Math/MathML" display="block"><mrow>${toMathRow(expr, options)}</mrow></math>`;
