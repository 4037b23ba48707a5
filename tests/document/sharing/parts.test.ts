import fc from 'fast-check';
import { expect, it } from 'vitest';
import {
  type Gathered,
  gather,
  joined,
  MOST_PARTS,
  missing,
  partsIn,
  partsOf,
} from '../../../src/document/sharing/parts.ts';

const code = fc
  .array(fc.constantFrom(...'ABCxyz019-_'), { minLength: 1, maxLength: 900 })
  .map((signs) => signs.join(''));

it('a code in parts comes back whole in whatever order they are scanned, bare or as links', () => {
  fc.assert(
    fc.property(
      code,
      fc.integer({ min: 60, max: 1000 }),
      fc.boolean(),
      fc.infiniteStream(fc.nat()),
      (whole, length, links, by) => {
        const parts = partsOf(whole, length);
        if (parts.length === 1) {
          expect(parts).toEqual([whole]);
          expect(partsIn(whole)).toEqual([]);
          return;
        }
        expect(Math.max(...parts.map((part) => part.length))).toBeLessThanOrEqual(length + 20);
        const order = parts
          .map((part) => ({ part, at: by.next().value as number }))
          .sort((a, b) => a.at - b.at)
          .map(({ part }) => part);
        let so: Gathered | undefined;
        order.forEach((part, i) => {
          const [found] = partsIn(links ? `https://shop.example/#/open/${part}` : `${part}\n`);
          so = gather(so, found!);
          expect(missing(so)).toHaveLength(parts.length - 1 - i);
        });
        expect(joined(so!)).toBe(whole);
      },
    ),
    { seed: 20, numRuns: 200 },
  );
});

it('a part of another sheet begins anew, and a piece that was changed is found out', () => {
  const [one, two] = partsOf('A'.repeat(100), 60).flatMap(partsIn);
  const other = partsIn(partsOf('B'.repeat(100), 60)[0]!)[0]!;
  expect(missing(gather(gather(undefined, one!), other))).toEqual([2]);
  const wrong = gather(gather(undefined, one!), { ...two!, piece: two!.piece.replace('A', 'C') });
  expect(missing(wrong)).toEqual([]);
  expect(joined(wrong)).toBeUndefined();
});

it('a code too long for as many scans has no parts, and what only looks like one is none', () => {
  expect(partsOf('A'.repeat(60 * MOST_PARTS + 1), 60)).toEqual([]);
  for (const text of [
    '3.2.1a2b3c4d.AAA',
    '0.2.1a2b3c4d.AAA',
    '1.1.1a2b3c4d.AAA',
    '1.99.1a2b3c4d.A',
    'x1.2.1a2b3c4d.A',
    '2.25.1',
  ])
    expect(partsIn(text), text).toEqual([]);
});
