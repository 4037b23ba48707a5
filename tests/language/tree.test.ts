import type { Tree } from '@lezer/common';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstError, parserFor, type Top, treeOf } from '../../src/language/grammar/tree.ts';
import { walk } from '../walk.ts';

const PIECES = [
  ...[
    '0',
    '1',
    '2',
    '3',
    '4',
    '9',
    '10',
    '25',
    '007',
    '.',
    '.',
    ' ',
    ' ',
    ' ',
    '+',
    '-',
    '−',
    '±',
    '+/-',
    '/',
    ',',
  ],
  ...[
    ';',
    '|',
    '\n',
    '\t',
    '(',
    ')',
    '=',
    'k',
    '*',
    '^',
    '"',
    "'",
    '#',
    'mm',
    'in',
    'um',
    'thou',
    'deg',
    'K',
    'm2',
  ],
  ...[
    '1/K',
    'H7',
    'h',
    'g6',
    'M',
    'x',
    'drill',
    'no.',
    'letter ',
    'UN',
    'set',
    'div',
    'of',
    '..',
    'to',
    'dia',
    'e',
  ],
  ...['over', 'tir', 'bore', '%', '²'],
];

const top = fc.constantFrom<Top>('Literal', 'Formula', 'Cut');

/** A text and another that differs from it in some of its digits. */
const twins = fc
  .tuple(
    fc.array(fc.constantFrom(...PIECES), { minLength: 1, maxLength: 9 }),
    fc.array(fc.nat(9), { minLength: 12, maxLength: 12 }),
    fc.boolean(),
  )
  .map(([pieces, digits, formula]) => {
    const text = (formula ? '=' : '') + pieces.join('');
    let i = 0;
    return [text, text.replace(/\d/g, () => String(digits[i++ % digits.length]))] as const;
  });

const nodesOf = (tree: Tree): string[] => {
  const nodes: string[] = [];
  tree.iterate({ enter: ({ name, from, to }) => void nodes.push(`${name} ${from} ${to}`) });
  return nodes;
};

describe('the tree of a text', () => {
  it('is the one the parser gives, whatever text of its shape was read before', () => {
    let shared = 0;
    fc.assert(
      fc.property(twins, top, ([first, second], of) => {
        const before = treeOf(of, first);
        const found = treeOf(of, second);
        const own = parserFor(of).parse(second);
        expect(nodesOf(found.tree)).toEqual(nodesOf(own));
        expect(found.sound).toBe(firstError(own) === undefined);
        if (found.tree === before.tree) shared++;
      }),
      { seed: 7, numRuns: walk(20_000, 200_000) },
    );
    expect(shared).toBeGreaterThan(500);
  });

  it('is shared by two numbers written in the same way', () => {
    expect(treeOf('Literal', '45.123 mm ± 20 um').tree).toBe(treeOf('Literal', '45.124 mm ± 15 um').tree);
    expect(treeOf('Literal', '4 m2').tree).not.toBe(treeOf('Literal', '4 m5').tree);
  });
});
