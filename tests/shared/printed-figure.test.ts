import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bandOf } from '../../shared/checks/band.ts';
import { judge, type Margin } from '../../shared/checks/check.ts';
import { gradeOf } from '../../shared/checks/states.ts';
import { formatFigure, formatLimit } from '../../shared/quantities/printed-figure.ts';
import type { DecisionRule } from '../../shared/sheet/format.ts';
import { findUnit, toSI, type Unit } from '../../shared/units/units.ts';

const unit = (symbol: string): Unit => findUnit(symbol) as Unit;
const numbers = (text: string): number[] => (text.match(/[+-]?\d+(\.\d+)?/g) ?? []).map(Number);

/** What a reader makes of it: value, low and high end. */
const readBack = (value: string, spread: string): { value: number; low: number; high: number } => {
  const [at = Number.NaN] = numbers(value);
  const ends = numbers(spread);
  if (ends.length === 0) return { value: at, low: at, high: at };
  const [first = 0, second = -first] = ends;
  return { value: at, low: at + second, high: at + first };
};

const near = fc.integer({ min: -20, max: 20 }).map((n) => n / 100);
const cases = fc.record({
  symbol: fc.constantFrom('mm', 'in', 'N', 'um'),
  rule: fc.constantFrom<DecisionRule>('worst-case', 'iso14253-2013', 'iso14253-2017'),
  value: fc.double({ min: 0.01, max: 200, noNaN: true }),
  // So near the limits that a place decides.
  half: fc.double({ min: 1e-5, max: 0.02, noNaN: true }),
  skew: fc.constantFrom(1, 1, 0.4),
  lower: fc.option(near, { nil: undefined }),
  upper: fc.option(near, { nil: undefined }),
  scale: fc.constantFrom(1e4, 1e4, 1e12),
  hair: fc.constantFrom(0, 1e-7, -1e-7, 3e-5, -3e-5, 4e-4, -4e-4),
});

test('what is printed never reads smaller than it is, nor contradicts the verdict', () => {
  fc.assert(
    fc.property(cases, ({ symbol, rule, value, half, skew, lower: a, upper: b, hair, scale }) => {
      // What lies beyond the places that anything is printed to is told by none.
      if (scale > 1e4 && half < 1e-3) return;
      const of = unit(symbol);
      const si = (x: number): number => toSI(x, of);
      // As typed, and as worked out: with more places than anything is read to.
      const rounded = (x: number): number => Math.round(x * scale) / scale;
      const [below, above] = [half * skew, half];
      const ends = [
        a === undefined ? undefined : rounded(value - below + a * half + hair * half),
        b === undefined ? undefined : rounded(value + above + b * half + hair * half),
      ];
      const [lower, upper] = ends.map((one) => (one === undefined ? undefined : si(one)));
      if (lower !== undefined && upper !== undefined && lower >= upper) return;
      const figure = {
        value: si(value),
        low: si(value) - below * of.factor,
        high: si(value) + above * of.factor,
        centre: si(value),
        u: (half * of.factor) / 2,
      };
      const margin = (sign: 1 | -1, limit: number | undefined): Margin | undefined =>
        limit === undefined
          ? undefined
          : {
              value: sign * (figure.value - limit),
              low: sign > 0 ? figure.low - limit : limit - figure.high,
              high: sign > 0 ? figure.high - limit : limit - figure.low,
              centre: sign * (figure.centre - limit),
              u: figure.u,
            };
      const [m, n] = [margin(1, lower), margin(-1, upper)];
      const check = judge({
        mode: 'part',
        rule,
        ...(m ? { lower: m } : {}),
        ...(n ? { upper: n } : {}),
        scale: figure.value,
      });
      const limits = {
        ...(lower === undefined ? {} : { lower: { value: lower } }),
        ...(upper === undefined ? {} : { upper: { value: upper } }),
      };
      const band = bandOf(figure, { check, limits }, false);
      const text = formatFigure(figure, of, { band });
      // A limit that an end stands on but for a hair is a matter of arithmetic, not of places.
      const hairs = [lower, upper].some((limit) =>
        [band.low, band.high].some(
          (end) => limit !== undefined && Math.abs(end - limit) < 1e-3 * half * of.factor,
        ),
      );
      const seen = readBack(text.value, text.spread);
      const told = JSON.stringify({ text: text.text, limits: ends, state: check.asNew.state });
      // No smaller than the true spread.
      const dust = 1e-8 * Math.max(1, value) + 1e-9 * half;
      expect(seen.high - seen.value, told).toBeGreaterThanOrEqual(
        (band.high - figure.value) / of.factor - dust,
      );
      expect(seen.value - seen.low, told).toBeGreaterThanOrEqual(
        (figure.value - band.low) / of.factor - dust,
      );
      const beside = { value: figure.value, low: band.low, high: band.high };
      const from =
        lower === undefined
          ? Number.NEGATIVE_INFINITY
          : (numbers(formatLimit(lower, of, { beside }))[0] as number);
      const to =
        upper === undefined
          ? Number.POSITIVE_INFINITY
          : (numbers(formatLimit(upper, of, { beside }))[0] as number);
      if (hairs) return;
      const inside = seen.low >= from - 1e-9 && seen.high <= to + 1e-9;
      const outside = seen.high < from || seen.low > to;
      switch (gradeOf(check.asNew.state)) {
        case 'in':
        case 'near':
          expect(inside, told).toBe(true);
          break;
        case 'open':
          expect(seen.low >= from && seen.high <= to, told).toBe(false);
          expect(outside, told).toBe(false);
          break;
        case 'out':
          expect(outside, told).toBe(true);
      }
    }),
    { seed: 12, numRuns: 5000 },
  );
});

test('a figure whose spread reaches a limit says so in as many places as it takes', () => {
  const mm = unit('mm');
  const figure = { value: 0.10004e-3, low: 0.09904e-3, high: 0.10104e-3, centre: 0.10004e-3, u: 0.0005e-3 };
  const upper = 0.101e-3;
  const gap = upper - figure.value;
  const margin = { value: gap, low: upper - figure.high, high: upper - figure.low, centre: gap, u: figure.u };
  const check = judge({ mode: 'plan', rule: 'worst-case', upper: margin });
  expect(check.asNew.state).toBe('may miss');
  const band = bandOf(figure, { check, limits: { upper: { value: upper } } }, false);
  expect(formatFigure(figure, mm, { band }).text.replaceAll('\u00a0', ' ')).toBe('0.10004 mm ± 0.00100 mm');
  expect(formatLimit(upper, mm)).toBe('0.101\u00a0mm');
});

test('a limit that is worked out is printed to what its unit is read to, where nothing beside it asks for more', () => {
  const text = (si: number, symbol: string, beside?: { value: number; low: number; high: number }) =>
    formatLimit(si, unit(symbol), { beside }).replaceAll('\u00a0', ' ');
  const inch = 0.0254;
  expect(text(39269.9081699 * 4.4482216152605, 'lbf')).toBe('39269.9 lbf');
  expect(text(1.750033 * inch, 'in')).toBe('1.75003 in');
  expect(text(1.7505 * inch, 'in')).toBe('1.7505 in');
  expect(text(0.0000123456 * inch, 'in')).toBe('0.0000123 in');
  // What stands on it, or next to it, is told from it.
  const at = (value: number) => ({ value: value * inch, low: (value - 0.01) * inch, high: value * inch });
  expect(text(1.750033 * inch, 'in', at(1.750033))).toBe('1.750033 in');
  expect(text(1.750033 * inch, 'in', at(1.750031))).toBe('1.750033 in');
  expect(text(1.750033 * inch, 'in', at(1.7499))).toBe('1.75003 in');
});
