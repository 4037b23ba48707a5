import type { SyntaxNode } from '@lezer/common';
import type { Span } from '../syntax/syntax.ts';
import { children, complain, type Reading, replaced, sliceOf } from '../values/reading.ts';

const GROUPED = /^\d{1,3}(?:,\d{3}){2,}(?:\.\d+)?(?![\d.,])/;
const OTHER_WAY = /^\d{1,3}(?:\.\d{3})+,\d+(?![\d.,])/;
const MIXED = /^[\d.]+(?:,[\d.]+){2,}(?![\d.,])/;
const TIGHT = /^\d+(?:,\d+)+(?![\d.,])/;

const ask = (r: Reading, span: Span, entries: readonly string[]): true => {
  const text = sliceOf(r, span);
  complain(
    r,
    'ask',
    entries.length === 1
      ? `${text}: is ${entries[0]} meant?`
      : `${text} can be read in two ways: ${entries.join(', or ')}?`,
    span,
    entries.map((label) => ({ label, entry: replaced(r, span, label) })),
  );
  return true;
};

const isMeasured = ({ context: { role } }: Reading): boolean => role === undefined || role === 'measured';

/** 29,000,000 and 1.234,5: a number with its thousands marked reads as a list of readings too. True where it was asked. */
const asksThousands = (r: Reading, node: SyntaxNode): boolean => {
  const text = sliceOf(r, node);
  const grouped = GROUPED.exec(text)?.[0];
  const found = grouped ?? OTHER_WAY.exec(text)?.[0];
  if (found === undefined) return false;
  const plain = grouped ? found.replaceAll(',', '') : found.replaceAll('.', '').replace(',', '.');
  const isComma = r.context.decimal === ',';
  const number = isComma ? plain.replace('.', ',') : plain;
  const list = isComma || !isMeasured(r) ? [] : [found.replaceAll(',', '; ')];
  return ask(r, { from: node.from, to: node.from + found.length }, [number, ...list]);
};

/** 72,73,74: commas between readings, or 72.73 and 74? Sizes come in pairs of whole and decimals: 44,40,44,41. */
const asksTight = (r: Reading, node: SyntaxNode): boolean => {
  const found = TIGHT.exec(sliceOf(r, node))?.[0];
  const parts = found?.split(',') ?? [];
  const isPaired = parts.length % 2 === 0;
  if (found === undefined || parts.length < 3 || (isPaired && r.kind?.name === 'length')) return false;
  const mark = r.context.decimal ?? '.';
  const pairs = parts.flatMap((part, i) => (i % 2 === 0 ? [`${part}${mark}${parts[i + 1]}`] : []));
  const entries = [parts.join('; '), ...(isPaired ? [pairs.join('; ')] : [])];
  return ask(r, { from: node.from, to: node.from + found.length }, entries);
};

/** 72.5,73,74: where one reading has a point, no comma is a decimal one. */
const asksMixed = (r: Reading, node: SyntaxNode): boolean => {
  const found = MIXED.exec(sliceOf(r, node))?.[0];
  return (
    found !== undefined &&
    r.context.decimal !== ',' &&
    found.includes('.') &&
    children(node).some((value) => value.name === 'Value' && sliceOf(r, value).includes(',')) &&
    ask(r, { from: node.from, to: node.from + found.length }, [found.replaceAll(',', '; ')])
  );
};

/** True where it was asked what the commas of a list part. */
export const asksCommas = (r: Reading, node: SyntaxNode): boolean =>
  asksThousands(r, node) || (isMeasured(r) && (asksTight(r, node) || asksMixed(r, node)));

/** 72,73 of readings that may be whole: a decimal comma, or two readings? Only figures that could be two of one thing. */
export const asksTwoOrOne = (r: Reading, node: SyntaxNode): boolean => {
  const [, left = '', right = ''] = /^(\d{2,}),(\d{2,})$/.exec(sliceOf(r, node)) ?? [];
  const [a, b] = [Number(left), Number(right)];
  const isAlike = left.length === right.length && a > 0 && Math.abs(a - b) * 4 <= Math.min(a, b);
  if (!isAlike || r.context.role !== 'measured' || r.context.decimal === ',' || r.kind?.name === 'length')
    return false;
  return ask(r, node, [`${left}.${right}`, `${left}; ${right}`]);
};
