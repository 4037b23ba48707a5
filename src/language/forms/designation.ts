import type { SyntaxNode } from '@lezer/common';
import { dimension } from '../../../shared/dimension.ts';
import { findUnit } from '../../../shared/units/units.ts';
import type { Literal } from '../syntax/syntax.ts';
import { complain, type Reading, sliceOf } from '../values/reading.ts';
import { fitsKind } from '../values/settle.ts';
import { decimalEcho } from './echo.ts';
import type { ReadForm } from './form.ts';

/** `No. 7 drill` and `#7` are one row of the table, `letter f` and `F drill` another. */
const drillKey = (text: string): string => {
  const bare = text
    .replace(/\s*(tap )?drill$/i, '')
    .replace(/["″]$/, '')
    .replace(',', '.')
    .trim();
  const number = /^(?:#|no\.?)\s?(\d+)$/i.exec(bare);
  if (number) return `#${Number(number[1])}`;
  const letter = /^(?:letter )?([a-z])$/i.exec(bare);
  if (letter) return (letter[1] as string).toUpperCase();
  const metric = /^([\d.]+)\s?mm$/i.exec(bare);
  return metric ? `${metric[1]} mm` : bare.replace(/(\d)[ -](\d+\/)/, '$1 $2');
};

/** One spelling for the table: single blanks, x, a point. */
const threadKey = (text: string): string =>
  text
    .replace(/["″]/g, '')
    .replace(/^no\.?\s?/i, '#')
    .replace(/#\s/, '#')
    .replace(/\s?[x×]\s?/i, 'x')
    .replace(',', '.')
    .replace(/\s+/g, ' ')
    .replace(/^m(?=\d)/, 'M')
    .trim();

export const readDesignation = (
  r: Reading,
  table: 'drill' | 'thread',
  node: SyntaxNode,
): ReadForm | undefined => {
  const text = sliceOf(r, node);
  const { drill, thread } = r.context.handbook;
  const key = table === 'drill' ? drillKey(text) : threadKey(text);
  const row = table === 'drill' ? drill(key) : thread(key);
  if (!row) {
    return complain(
      r,
      'unknown-key',
      `There is no ${table} ${key} in the tables: enter its size with a unit, such as 0.201 in.`,
      node,
    );
  }
  const size = 'size' in row ? row.size : row.major;
  const unit = findUnit(r.context.units.length)!;
  const value: Literal = {
    kind: 'literal',
    value: size,
    dimension: dimension(1),
    point: false,
    bare: false,
    text,
    from: node.from,
    to: node.to,
  };
  if (!fitsKind(r, value)) return undefined;
  return {
    entry: { kind: 'designation', table, key, value },
    echo: `${row.name}: ${decimalEcho(size, unit)}`,
  };
};
