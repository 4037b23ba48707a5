import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cellOf,
  cellRow,
  inputOf,
  inputRow,
  isPart,
  isValidity,
  outputRow,
  partRow,
  planOf,
  READING_FIGURES,
  type RowKey,
  type RowPart,
  setOf,
  validityRow,
} from '../../../src/engine/rows/key.ts';

const SEED = 20261130;

/** Texts made of everything that a key is made of. */
const text = fc
  .array(
    fc.constantFrom(
      ...[
        'a',
        'b',
        '/',
        '%',
        '.',
        '!',
        '~',
        '@',
        '>',
        '?',
        '{',
        ' ',
        '\u0000',
        '\u0001',
        '\u0002',
        '\n',
        '\u007f',
      ],
      ...['in.', 'out.', 'least', 'measured', 'read', 'validity', '2f', '25', '00', 'é', '\ud800'],
    ),
    { maxLength: 6 },
  )
  .map((some) => some.join(''));

const PARTS: readonly RowPart[] = [
  ...READING_FIGURES,
  ...(['lower', 'upper', 'wear', 'above-lower', 'below-upper', 'below-wear', 'above-wear'] as const),
  ...(['measured', 'difference', 'replanned', 'read', 'formula', 'cut', 'spread'] as const),
  ...([
    'mean-doubt',
    'single-doubt',
    'difference-doubt',
    'own-doubt',
    'form',
    'form-doubt',
    'unread',
  ] as const),
  ...(['beyond', 'taper-beyond', 'round-beyond', 'unknown', 'temperature'] as const),
];

/** How a row came about. */
interface Way {
  cell: string;
  side: 'cell' | 'in' | 'out' | 'validity';
  name: string;
  number: number | undefined;
  parts: RowPart[];
}

const way: fc.Arbitrary<Way> = fc.record({
  cell: text,
  side: fc.constantFrom('cell' as const, 'in' as const, 'out' as const, 'validity' as const),
  name: text,
  number: fc.option(fc.nat(12), { nil: undefined }),
  parts: fc.array(fc.constantFrom(...PARTS), { maxLength: 3 }),
});

const keyOf = ({ cell, side, name, number, parts }: Way): RowKey => {
  if (side === 'validity') return validityRow(cell, number);
  const row = side === 'in' ? inputRow(cell, name) : side === 'out' ? outputRow(cell, name) : cellRow(cell);
  return parts.reduce<RowKey>(partRow, row);
};

/** What of a way its key stands for. */
const meant = ({ cell, side, name, number, parts }: Way): unknown =>
  side === 'validity' ? [cell, side, number] : [cell, side, ...(side === 'cell' ? [] : [name]), ...parts];

describe('keys of rows, by whatever ids and names', () => {
  test('two rows have one key only where they are the same row', () => {
    fc.assert(
      fc.property(way, way, (a, b) => {
        expect(keyOf(a) === keyOf(b)).toBe(JSON.stringify(meant(a)) === JSON.stringify(meant(b)));
      }),
      { seed: SEED, numRuns: 2000 },
    );
    // Near ones too: the id of one is the key of the other.
    fc.assert(
      fc.property(way, way, (a, b) => {
        const forged = { ...b, cell: keyOf(a) as string };
        if (JSON.stringify(meant(forged)) !== JSON.stringify(meant(a)))
          expect(keyOf(forged)).not.toBe(keyOf(a));
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });

  test('a key tells its cell, its input and its last part', () => {
    fc.assert(
      fc.property(way, (one) => {
        const key = keyOf(one);
        const last = one.side === 'validity' ? undefined : one.parts.at(-1);
        expect(cellOf(key)).toBe(one.cell);
        expect(inputOf(key)).toBe(one.side === 'in' ? one.name : undefined);
        expect(isValidity(key)).toBe(one.side === 'validity');
        for (const part of PARTS) expect(isPart(key, part), `${key} ${part}`).toBe(part === last);
        const before = one.side === 'validity' ? key : keyOf({ ...one, parts: one.parts.slice(0, -1) });
        expect(planOf(key)).toBe(last === 'measured' ? before : undefined);
        const isFigure = (READING_FIGURES as readonly (string | undefined)[]).includes(last);
        expect(setOf(key)).toBe(isFigure ? before : key);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });
});
