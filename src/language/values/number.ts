import type { SyntaxNode } from '@lezer/common';
import { decimalRatio, over, plus, type Ratio } from '../../../shared/units/exact.ts';
import { complain, type Reading, replaced, sliceOf } from './reading.ts';

/** A number as typed, exact. */
export interface Typed {
  ratio: Ratio;
  /** Digits after the decimal mark; absent for a fraction. */
  digits?: number;
}

const MAX_DIGITS = 40;
const NUMBERS = new Set([
  'Number',
  'Fraction',
  'Mixed',
  'BareFraction',
  'BareMixed',
  'OtherPoint',
  'AskNumber',
]);

export const isNumberNode = (node: SyntaxNode): boolean => NUMBERS.has(node.name);

const isFractionNode = (node: SyntaxNode): boolean => /Fraction|Mixed/.test(node.name);

const readFraction = (r: Reading, node: SyntaxNode): Typed | undefined => {
  const text = sliceOf(r, node);
  const [whole, top = '', bottom = ''] = /^(?:(\d+)[^\d/]+)?(\d+)\/(\d+)$/.exec(text)?.slice(1) ?? [];
  const above = decimalRatio(top);
  const below = decimalRatio(bottom);
  if (!above || !below) return complain(r, 'syntax', `"${text}" is not a fraction.`, node);
  if (below.n === 0n) {
    return complain(
      r,
      'arithmetic',
      `"${text}" divides by zero: a fraction needs a number other than 0 below the stroke.`,
      node,
    );
  }
  const part = over(above, below);
  if (whole !== undefined && above.n * below.d >= below.n * above.d)
    return improper(r, node, whole, top, bottom);
  const more = whole === undefined ? undefined : decimalRatio(whole);
  return { ratio: more ? plus(more, part) : part };
};

/** 2 5/4: a mixed number that a slip of a figure has made. */
const improper = (r: Reading, node: SyntaxNode, whole: string, top: string, bottom: string): undefined => {
  const joined = `${BigInt(whole) * BigInt(bottom) + BigInt(top)}/${bottom}`;
  return complain(
    r,
    'ask',
    `${sliceOf(r, node)}: the fraction behind a whole number is below 1, and ${top}/${bottom} is not. Is a figure wrong, or is ${joined} meant?`,
    node,
    [{ label: joined, entry: replaced(r, node, joined) }],
  );
};

/** Reads one number node. A decimal comma becomes a point in what is stored; a doubtful one is asked about. */
export const readNumber = (r: Reading, node: SyntaxNode): Typed | undefined => {
  const text = sliceOf(r, node);
  if (text.replace(/\D/g, '').length > MAX_DIGITS) {
    return complain(
      r,
      'too-big',
      `A number has at most ${MAX_DIGITS} digits; this one has ${text.replace(/\D/g, '').length}.`,
      node,
    );
  }
  if (isFractionNode(node)) return readFraction(r, node);
  if (node.name === 'AskNumber') return askMark(r, node);
  const point = text.replace(',', '.');
  if (point !== text) r.edits.push({ from: node.from, to: node.to, insert: point });
  const size = Number(point);
  const exponent = Number(/[eE]([+-]?\d+)$/.exec(point)?.[1] ?? 0);
  if (!Number.isFinite(size) || Math.abs(exponent) > 320) {
    return complain(
      r,
      'range',
      `${text} is beyond what can be computed with: exponents go from -320 to 308.`,
      node,
    );
  }
  const ratio = decimalRatio(point);
  if (!ratio) return complain(r, 'syntax', `"${text}" is not a number.`, node);
  return { ratio, digits: /[.](\d*)/.exec(point)?.[1]?.length ?? 0 };
};

/** 1,234: one and a bit, or one thousand two hundred and thirty-four? In a formula also two arguments. */
const askMark = (r: Reading, node: SyntaxNode): undefined => {
  const text = sliceOf(r, node);
  const comma = r.context.decimal === ',';
  const decimal = text.replace(/[.,]/, comma ? ',' : '.');
  const [left = '', right = ''] = text.split(/[.,]/);
  const inFormula = node.matchContext(['Formula']) || r.text.trimStart().startsWith('=');
  const other =
    inFormula && text.includes(',') && !comma
      ? `${left}; ${right}`
      : right.length === 3
        ? left + right
        : undefined;
  const choices = [decimal, other]
    .filter((reading) => reading !== undefined)
    .map((reading) => ({ label: reading, entry: replaced(r, node, reading) }));
  return complain(
    r,
    'ask',
    `${text} can be read in two ways: ${choices.map((c) => c.label).join(' or ')}?`,
    node,
    choices,
  );
};
