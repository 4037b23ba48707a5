import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDown,
  addUp,
  divDown,
  divUp,
  mulDown,
  mulUp,
  quotientDown,
  quotientUp,
} from '../../../src/language/bounds/directed.ts';
import { walk } from '../../walk.ts';

/** A double as a fraction of whole numbers, exactly. */
const exact = (x: number): { top: bigint; bottom: bigint } => {
  let bottom = 1n;
  let scaled = x;
  while (!Number.isInteger(scaled)) {
    scaled *= 2;
    bottom *= 2n;
  }
  return { top: BigInt(scaled), bottom };
};

const compare = (a: { top: bigint; bottom: bigint }, b: { top: bigint; bottom: bigint }): number => {
  const apart = a.top * b.bottom - b.top * a.bottom;
  return apart < 0n ? -1 : apart > 0n ? 1 : 0;
};

const number = fc.oneof(
  fc
    .double({ min: -1e12, max: 1e12, noNaN: true, noDefaultInfinity: true })
    .filter((x) => x === 0 || Math.abs(x) > 1e-30),
  fc.integer({ min: -50, max: 50 }).map((x) => x / 8),
  fc.constantFrom(0.1, 0.2, 0.3, -0.1, 1 / 3, 1e-9, 0.0254),
);

/** How far apart two neighbours among doubles may lie that enclose what no double is. */
const isTight = (low: number, high: number): boolean =>
  high - low <= 4.5e-16 * Math.max(Math.abs(low), Math.abs(high)) + 1e-300;

describe('directed rounding', () => {
  it('encloses the exact result of each operation, and is it where a double holds it', () => {
    fc.assert(
      fc.property(number, number, (a, b) => {
        const [x, y] = [exact(a), exact(b)];
        const cases: [number, number, { top: bigint; bottom: bigint }][] = [
          [
            addDown(a, b),
            addUp(a, b),
            { top: x.top * y.bottom + y.top * x.bottom, bottom: x.bottom * y.bottom },
          ],
          [mulDown(a, b), mulUp(a, b), { top: x.top * y.top, bottom: x.bottom * y.bottom }],
        ];
        if (b !== 0) {
          const sign = y.top < 0n ? -1n : 1n;
          cases.push([
            divDown(a, b),
            divUp(a, b),
            { top: sign * x.top * y.bottom, bottom: sign * x.bottom * y.top },
          ]);
        }
        for (const [low, high, truth] of cases) {
          expect(compare(exact(low), truth)).toBeLessThanOrEqual(0);
          expect(compare(exact(high), truth)).toBeGreaterThanOrEqual(0);
          expect(isTight(low, high)).toBe(true);
          if (compare(exact(low), truth) === 0 || compare(exact(high), truth) === 0) expect(low).toBe(high);
        }
      }),
      { seed: 12, numRuns: walk(750, 30_000) },
    );
  });

  // IEEE Std 1788-2015, clause 10 (set-based intervals, table 9.1 of the arithmetic operations); examples from memory.
  it.each([
    ['[1, 2] + [5, ∞]', addDown(1, 5), addUp(2, Infinity), 6, Infinity],
    ['[-∞, 2] + [-∞, 4]', addDown(-Infinity, -Infinity), addUp(2, 4), -Infinity, 6],
    ['[1, ∞] - [1, ∞]', addDown(1, -Infinity), addUp(Infinity, -1), -Infinity, Infinity],
    ['[-30, -15] / [-5, -3]', quotientDown(-30, -15, -5, -3), quotientUp(-30, -15, -5, -3), 3, 10],
    ['[-30, 15] / [3, 5]', quotientDown(-30, 15, 3, 5), quotientUp(-30, 15, 3, 5), -10, 5],
    ['[15, 30] / [0, 3]', quotientDown(15, 30, 0, 3), quotientUp(15, 30, 0, 3), 5, Infinity],
    ['[-30, -15] / [0, 3]', quotientDown(-30, -15, 0, 3), quotientUp(-30, -15, 0, 3), -Infinity, -5],
    ['[15, 30] / [-3, 0]', quotientDown(15, 30, -3, 0), quotientUp(15, 30, -3, 0), -Infinity, -5],
    ['[15, 30] / [3, ∞]', quotientDown(15, 30, 3, Infinity), quotientUp(15, 30, 3, Infinity), 0, 10],
  ])('%s', (_, low, high, wantedLow, wantedHigh) => {
    expect([low, high]).toEqual([wantedLow, wantedHigh]);
  });

  const I = Number.POSITIVE_INFINITY;
  // The public test set of IEEE Std 1788-2015 (ITF1788), minimal_div_test, seen. The last are not to be written as doubles.
  it.each([
    [
      [15, 30],
      [-5, -3],
      [-10, -3],
    ],
    [
      [15, 30],
      [3, 5],
      [3, 10],
    ],
    [
      [15, 30],
      [-I, -3],
      [-10, 0],
    ],
    [
      [15, 30],
      [-3, 0],
      [-I, -5],
    ],
    [
      [15, 30],
      [0, 3],
      [5, I],
    ],
    [
      [0, 0],
      [-5, -3],
      [0, 0],
    ],
    [
      [0, 0],
      [3, 5],
      [0, 0],
    ],
    [
      [-I, -15],
      [-5, -3],
      [3, I],
    ],
    [
      [-I, -15],
      [3, 5],
      [-I, -3],
    ],
    [
      [-I, -15],
      [0, 3],
      [-I, -5],
    ],
    [
      [-I, 15],
      [3, 5],
      [-I, 5],
    ],
    [
      [-I, 15],
      [-5, -3],
      [-5, I],
    ],
    [
      [-2, -1],
      [-10, -3],
      [0.09999999999999999, 0.6666666666666667],
    ],
    [
      [-2, -1],
      [0, 10],
      [-I, -0.09999999999999999],
    ],
    [
      [-1, 2],
      [10, I],
      [-0.1, 0.2],
    ],
    [
      [1, 3],
      [-I, -10],
      [-0.30000000000000004, 0],
    ],
    [
      [-I, -1],
      [1, 3],
      [-I, -0.3333333333333333],
    ],
    [
      [1, 1],
      [-50, -10],
      [-0.1, -0.019999999999999997],
    ],
    [
      [1, 1],
      [10, 50],
      [0.019999999999999997, 0.1],
    ],
  ] as const)('%j / %j is %j', ([a, b], [c, d], wanted) => {
    // -0 is 0.
    expect([quotientDown(a, b, c, d) + 0, quotientUp(a, b, c, d) + 0]).toEqual(wanted);
  });
});
