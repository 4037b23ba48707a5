import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FAULTS, LOST, POLE, TURN } from '../../../src/language/bounds/bound.ts';
import { type Enclosure, enclose } from '../../../src/language/bounds/enclose.ts';
import { evaluate } from '../../../src/language/compile/evaluate.ts';
import { catalogueOf } from '../../../src/language/functions/functions.ts';
import { parseEntry } from '../../../src/language/parse.ts';
import type { Expr } from '../../../src/language/syntax/syntax.ts';
import { walk } from '../../walk.ts';
import { at } from '../context.ts';
import { plainFormulas } from '../formulas.ts';

const NAMES = 'abcd';
const functions = catalogueOf([]);

const exprIn = (text: string): Expr | undefined => {
  const { entry } = parseEntry(text, at());
  return entry.kind === 'formula' ? entry.expr : undefined;
};

const over = (expr: Expr, box: readonly (readonly [number, number])[]): Enclosure => {
  const made = enclose(expr, NAMES.length, ({ name }) => NAMES.indexOf(name), functions);
  box.forEach(([lo, hi], i) => {
    Object.assign(made.ports[i] as object, { lo, hi });
  });
  made.root.forward();
  return made;
};

const valueAt = (expr: Expr, point: readonly number[]): number => {
  const found = evaluate(expr, ({ name }) => point[NAMES.indexOf(name)] as number, functions);
  return typeof found === 'object' ? Number.NaN : Number(found);
};

/** What lies at the end of the doubles overflows in products and quotients, and has no value then. */
const notTiny = (x: number): number => (Math.abs(x) < 1e-9 ? 0 : x);

const side = fc.record({
  middle: fc.oneof(
    fc.constantFrom(0, 0.5, 1, -1, 2, 3, 10),
    fc.double({ min: -20, max: 20, noNaN: true }).map(notTiny),
  ),
  half: fc.oneof(fc.constantFrom(0, 0.5, 1), fc.double({ min: 0, max: 3, noNaN: true }).map(notTiny)),
});
const box = fc
  .array(side, { minLength: NAMES.length, maxLength: NAMES.length })
  .map((sides) => sides.map(({ middle, half }) => [middle - half, middle + half] as const));
const shares = fc.array(
  fc.array(fc.oneof(fc.constantFrom(0, 0.5, 1), fc.double({ min: 0, max: 1, noNaN: true })), {
    minLength: 4,
    maxLength: 4,
  }),
  {
    minLength: 6,
    maxLength: 6,
  },
);

const inside = (box: readonly (readonly [number, number])[], shares: readonly number[]): number[] =>
  box.map(([lo, hi], i) => Math.min(hi, lo + (shares[i] as number) * (hi - lo)));

/** Arithmetic on doubles at the point itself. */
const hair = (x: number): number => 1e-9 * Math.max(1e-6, Math.abs(x));

describe('an enclosure', () => {
  it('holds every value of a random formula over a random box, and has no value where it says none is lost', () => {
    let held = 0;
    fc.assert(
      fc.property(plainFormulas, box, shares, (text, sides, points) => {
        const expr = exprIn(text);
        if (!expr) return;
        const { root } = over(expr, sides);
        for (const share of points) {
          const value = valueAt(expr, inside(sides, share));
          const what = `${text} over ${JSON.stringify(sides)} at ${share}: ${value} in ${root.lo} .. ${root.hi}`;
          if (Number.isNaN(value)) {
            // What is beyond a double has no value either, and no bound.
            if (Number.isFinite(root.lo) && Number.isFinite(root.hi))
              expect(root.flags & FAULTS, what).not.toBe(0);
            continue;
          }
          held += 1;
          expect(value, what).toBeGreaterThanOrEqual(root.lo - hair(root.lo));
          expect(value, what).toBeLessThanOrEqual(root.hi + hair(root.hi));
        }
      }),
      { seed: 7, numRuns: walk(1500, 40_000) },
    );
    expect(held).toBeGreaterThan(5000);
  });

  it('holds every slope between two points that differ in one quantity', () => {
    let held = 0;
    fc.assert(
      fc.property(plainFormulas, box, shares, fc.nat(3), (text, sides, points, which) => {
        const expr = exprIn(text);
        if (!expr) return;
        const { root, ports } = over(expr, sides);
        if (root.flags & FAULTS) return;
        root.back(1, 1);
        const port = ports[which] as (typeof ports)[number];
        for (const share of points) {
          const from = inside(sides, share);
          const to = [...from];
          const [lo, hi] = sides[which] as readonly [number, number];
          to[which] = Math.min(hi, lo + (1 - (share[which] as number)) * (hi - lo));
          const step = (to[which] as number) - (from[which] as number);
          const [a, b] = [valueAt(expr, from), valueAt(expr, to)];
          if (Math.abs(step) < 1e-3 || Number.isNaN(a + b)) continue;
          held += 1;
          const slope = (b - a) / step;
          const loose = 1e-9 * Math.max(1, Math.abs(a), Math.abs(b)) + hair(slope);
          const what = `${text} over ${JSON.stringify(sides)} in ${NAMES[which]}: ${slope} in ${port.dlo} .. ${port.dhi}`;
          expect(slope, what).toBeGreaterThanOrEqual(port.dlo - loose);
          expect(slope, what).toBeLessThanOrEqual(port.dhi + loose);
        }
      }),
      { seed: 8, numRuns: walk(4000, 40_000) },
    );
    expect(held).toBeGreaterThan(4000);
  });
});

const one = (text: string, ...sides: (readonly [number, number])[]) => {
  const expr = exprIn(text);
  if (!expr) throw new Error(`no formula: ${text}`);
  return over(expr, [...sides, ...Array(4 - sides.length).fill([0, 0])]).root;
};

// IEEE Std 1788-2015, clause 10.5 (elementary functions of set-based intervals); examples from memory.
it.each([
  ['=ABS(a)', [-3, 2], 0, 3],
  ['=EXP(a)', [0, 1], 1, Math.E],
  ['=LN(a)', [1, Math.E], 0, 1],
  ['=SIN(a)', [0, 3], 0, 1],
  ['=COS(a)', [-1, 2], Math.cos(2), 1],
  ['=ATAN2(a; 1)', [-1, 1], Math.PI / 4, (3 * Math.PI) / 4],
  ['=MAX(a; 1)', [-3, 2], 1, 2],
  ['=INT(a)', [-1.5, 2.5], -2, 2],
  ['=1 / a', [2, 4], 0.25, 0.5],
  ['=MOD(a; 3)', [4, 5], 1, 2],
  ['=MOD(a; 3)', [5, 7], 0, 3],
  ['=MEDIAN(a; 1; 5)', [0, 3], 1, 3],
] as const)('%s over %j', (text, side, low, high) => {
  const { lo, hi } = one(text, side);
  expect(lo).toBeLessThanOrEqual(low);
  expect(hi).toBeGreaterThanOrEqual(high);
  expect(lo).toBeCloseTo(low, 12);
  expect(hi).toBeCloseTo(high, 12);
});

describe('where there is no bound', () => {
  it('tells a pole, and judges each side by itself', () => {
    expect(one('=1 / a', [-0.5, 1.5])).toMatchObject({ lo: -Infinity, hi: Infinity, flags: POLE });
    expect(one('=1 / a', [0, 2])).toMatchObject({ lo: 0.5, hi: Infinity, flags: POLE });
    expect(one('=1 / a^2', [-2, 1])).toMatchObject({ lo: 0.25, hi: Infinity, flags: POLE });
    expect(one('=TAN(a)', [1, 2])).toMatchObject({ lo: -Infinity, hi: Infinity, flags: POLE });
  });
  it('tells where there is no value at all', () => {
    expect(one('=SQRT(a)', [-1, 1])).toMatchObject({ lo: -Infinity, hi: Infinity, flags: LOST });
    expect(one('=MIN(SQRT(a); 5)', [-1, 1]).flags & LOST).toBe(LOST);
    expect(one('=LN(a)', [-1, 1]).flags & LOST).toBe(LOST);
    expect(one('=ASIN(a)', [0, 2]).flags & LOST).toBe(LOST);
  });
  it('does not lose what a branch keeps out', () => {
    expect(one('=IF(a > b; SQRT(a - b); 0)', [0, 2], [1, 1])).toMatchObject({ lo: 0, flags: TURN });
    expect(one('=IF(a >= 0; SQRT(a); -a)', [-1, 4])).toMatchObject({
      lo: 0,
      hi: expect.closeTo(2, 9),
      flags: TURN,
    });
    expect(one('=IF(AND(a > 0.5; b > 0); 1 / a; 2)', [-1, 4], [1, 2])).toMatchObject({
      hi: expect.closeTo(2, 9),
      flags: TURN,
    });
  });
});

describe('what counts as equal', () => {
  it('is decided where rounding alone sets two sides apart', () => {
    expect(one('=IF(a - b >= 0.1; 1; 2)', [10, 10], [9.9, 9.9])).toMatchObject({ lo: 1, hi: 1, flags: 0 });
    expect(one('=INT((a - b) / 0.1)', [10, 10], [9.9, 9.9])).toMatchObject({ lo: 1, hi: 1, flags: 0 });
  });
  it('is open where a spread reaches over', () => {
    expect(one('=IF(a - b >= 0.1; 1; 2)', [10, 10], [9.8, 9.95])).toMatchObject({
      lo: 1,
      hi: 2,
      flags: TURN,
    });
  });
});
