import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseFormula } from '../../src/language/parse.ts';
import { stackBars } from '../../src/page/unfolded/bars.ts';
import { brokenScale } from '../../src/page/unfolded/broken-scale.ts';
import { stackTerms } from '../../src/page/unfolded/terms.ts';

const termsOf = (formula: string) =>
  stackTerms(parseFormula(formula, { units: { length: 'in' } }).expr!)?.map(
    ({ sign, of }) => `${sign === 1 ? '+' : '-'}${of.kind === 'ref' ? of.name : of.text}`,
  );

test('sums and differences come apart, brackets and signs settled', () => {
  expect(termsOf('= gap - (length + 2 in)')).toEqual(['+gap', '-length', '-2 in']);
  expect(termsOf('= a - (b - c)')).toEqual(['+a', '-b', '+c']);
  expect(termsOf('= -a + b')).toEqual(['-a', '+b']);
});

test('what is no stack of sizes is none', () => {
  expect(termsOf('= (a + b) / 2')).toBeUndefined();
  expect(termsOf('= MAX(a; b)')).toBeUndefined();
});

test('a gap of thousandths is seen beside inches', () => {
  const inch = 0.0254;
  const { bars, total, breaks } = stackBars(
    [
      { sign: 1, value: 4.0062 * inch, low: 4.0055 * inch, high: 4.0069 * inch },
      { sign: -1, value: 4.0002 * inch, low: 3.9992 * inch, high: 4.0012 * inch },
    ],
    { value: 0.006 * inch, low: 0.0043 * inch, high: 0.0077 * inch },
    260,
  );
  expect(breaks).toHaveLength(1);
  expect(total.to - total.from).toBeGreaterThan(20);
  expect(bars[0]!.to).toBe(bars[1]!.from);
  expect(bars[1]!.to).toBeCloseTo(total.to, 9);
  // Taken away: its end moves left where it is greater.
  expect(bars[1]!.low).toBeLessThan(bars[1]!.to);
});

test('the scale keeps the order of places, and all of them on the drawing', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -10, max: 10, noNaN: true }), { minLength: 1, maxLength: 6 }),
      fc.double({ min: 1e-5, max: 5, noNaN: true }),
      (ends, detail) => {
        const { place } = brokenScale(ends, detail, 260);
        const placed = [...ends].sort((a, b) => a - b).map(place);
        for (const [i, x] of placed.entries()) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(260);
          if (i > 0) expect(x).toBeGreaterThanOrEqual(placed[i - 1]! - 1e-9);
        }
      },
    ),
    { seed: 7, numRuns: 300 },
  );
});

test('a spread that is not known is not drawn', () => {
  const { bars, total } = stackBars(
    [{ sign: 1, value: 0.05, low: Number.NaN, high: Number.NaN }],
    { value: 0.05, low: Number.NaN, high: Number.NaN },
    260,
  );
  for (const bar of [...bars, total]) expect([bar.low, bar.high]).toEqual([bar.to, bar.to]);
});
