import type { SyntaxNode } from '@lezer/common';
import type { Literal } from '../syntax/syntax.ts';
import { readAmount } from '../values/amount.ts';
import { isNumberNode } from '../values/number.ts';
import { children, complain, type Reading, remedy, replaced, sliceOf, wanted } from '../values/reading.ts';
import { settleLiterals } from '../values/settle.ts';
import type { ReadForm } from './form.ts';

/** 2..25, limits of size so far apart that a point may have been hit twice. */
const isDoublePoint = (r: Reading, node: SyntaxNode, low: Literal, high: Literal): boolean =>
  /^\d+\.\.\d+(?!\d*[.,])/.test(sliceOf(r, node)) && high.value >= 2 * low.value;

const askDoublePoint = (r: Reading, node: SyntaxNode): undefined => {
  const text = sliceOf(r, node);
  const entries = [text.replace('..', r.context.decimal ?? '.'), text.replace('..', ' .. ')];
  return complain(
    r,
    'ask',
    `${text}: is ${entries[0]} meant, or the limits ${entries[1]}?`,
    node,
    entries.map((label) => ({ label, entry: replaced(r, node, label) })),
  );
};

/** 2.2510..2.2515 in: limits of size. */
export const readRange = (r: Reading, node: SyntaxNode): ReadForm | undefined => {
  if (r.context.role === 'measured') {
    const list = sliceOf(r, node).replace(/\s*(?:\.\.|\bto\b)\s*/, '; ');
    return complain(
      r,
      'ask',
      `${sliceOf(r, node)} are limits of size, and a part that was measured has readings: are these two readings?`,
      node,
      [{ label: list, entry: replaced(r, node, list) }],
    );
  }
  const groups: SyntaxNode[][] = [];
  for (const child of children(node)) {
    if (isNumberNode(child)) groups.push([child]);
    else if (child.name === 'Unit') groups.at(-1)?.push(child);
  }
  const amounts = groups.map((group) => readAmount(r, group, wanted(r)));
  const [first, second] = amounts;
  if (!first || !second) return undefined;
  const settled = settleLiterals(r, [first, second]);
  const [low, high] = settled?.literals ?? [];
  if (!low || !high) return undefined;
  if (low.value > high.value) {
    const [a, b] = [sliceOf(r, first), sliceOf(r, second)];
    // A unit that only the second has stays behind both.
    const tail =
      second.unit && !first.unit && second.unitSpan ? r.text.slice(second.unitSpan.from, second.to) : '';
    const entry = replaced(
      r,
      { from: first.from, to: second.to },
      tail ? `${b.slice(0, -tail.length).trimEnd()}..${a} ${tail}` : `${b}..${a}`,
    );
    return complain(r, 'range', `The lower limit ${a} is above the upper ${b}.`, node, [remedy(entry)]);
  }
  return isDoublePoint(r, node, low, high)
    ? askDoublePoint(r, node)
    : { entry: { kind: 'range', low, high } };
};
