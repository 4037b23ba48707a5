import type { SyntaxNode } from '@lezer/common';
import { NUMBER_UNIT } from '../../shared/quantities/quantities.ts';
import type { BinaryOperator, CompareOperator, Expr, Literal, Span } from './syntax/syntax.ts';
import { readAmount, toLiteral } from './values/amount.ts';
import { children, complain, type Reading, sliceOf } from './values/reading.ts';

const NUMBERS = new Set(['Number', 'OtherPoint', 'AskNumber']);
const OPERANDS = new Set([
  ...NUMBERS,
  ...[
    'Quantity',
    'Compound',
    'Text',
    'Output',
    'CellName',
    'Call',
    'Parens',
    'Negative',
    'Power',
    'Product',
    'Sum',
    'Compare',
  ],
]);

export const operands = (node: SyntaxNode): SyntaxNode[] =>
  children(node).filter((child) => OPERANDS.has(child.name));

/** A sign in front is a node of its own in a formula, so a literal here is never negative. */
const literal = (r: Reading, node: SyntaxNode): Literal | undefined => {
  const nodes = node.name === 'Quantity' ? children(node) : [node];
  const signed = readAmount(r, nodes, {});
  if (!signed) return undefined;
  const amount = {
    ...signed,
    from: node.from,
    ratio: signed.ratio.n < 0n ? { n: -signed.ratio.n, d: signed.ratio.d } : signed.ratio,
  };
  return toLiteral(r, amount, amount.unit ?? NUMBER_UNIT);
};

const spelled = (text: string): string => text.normalize('NFC');

const binaryOperator = (r: Reading, node: SyntaxNode): BinaryOperator => {
  if (node.name === 'Power') return '^';
  if (node.name === 'Product') return node.getChild('Times') ? '*' : '/';
  return sliceOf(r, node.getChild('Plus') ?? node) === '+' ? '+' : '-';
};

const two = (r: Reading, node: SyntaxNode): { left: Expr; right: Expr } | undefined => {
  const [a, b] = operands(node);
  const left = a && readExpression(r, a);
  const right = b && readExpression(r, b);
  return left && right && { left, right };
};

/** Tree of a formula without syntax errors; undefined where a literal in it cannot be read, which has then been said. */
export const readExpression = (r: Reading, node: SyntaxNode): Expr | undefined => {
  const span: Span = { from: node.from, to: node.to };
  if (NUMBERS.has(node.name) || node.name === 'Quantity' || node.name === 'Compound') return literal(r, node);
  switch (node.name) {
    case 'Text':
      return { kind: 'text', text: sliceOf(r, node).slice(1, -1), ...span };
    case 'CellName':
      return { kind: 'ref', name: spelled(sliceOf(r, node)), ...span };
    case 'Output': {
      const [cell, output] = [node.getChild('CellName'), node.getChild('OutputName')];
      if (!cell || !output) return undefined;
      return { kind: 'ref', name: spelled(sliceOf(r, cell)), output: spelled(sliceOf(r, output)), ...span };
    }
    case 'Call': {
      const name = node.getChild('FunctionName');
      const args = operands(node).map((arg) => readExpression(r, arg));
      const whole = args.filter((arg) => arg !== undefined);
      for (const mark of node.getChildren('ArgSep')) {
        if (sliceOf(r, mark) === ',') r.edits.push({ from: mark.from, to: mark.to, insert: ';' });
      }
      if (!name || whole.length < args.length) return undefined;
      return { kind: 'call', fn: sliceOf(r, name).toUpperCase(), args: whole, ...span };
    }
    case 'Parens':
    case 'Negative': {
      const inner = operands(node)[0];
      const of = inner && readExpression(r, inner);
      if (!of) return undefined;
      if (node.name === 'Parens') return { kind: 'group', of, ...span };
      return node.getChild('Plus') ? of : { kind: 'negate', of, ...span };
    }
    case 'Compare': {
      const sides = two(r, node);
      const op = node.getChild('CompareOp');
      return sides && op
        ? { kind: 'compare', op: sliceOf(r, op) as CompareOperator, ...sides, ...span }
        : undefined;
    }
    case 'Power':
    case 'Product':
    case 'Sum': {
      const sides = two(r, node);
      return sides && { kind: 'binary', op: binaryOperator(r, node), ...sides, ...span };
    }
    default:
      return complain(r, 'syntax', `"${sliceOf(r, node)}" cannot stand in a formula.`, node);
  }
};
