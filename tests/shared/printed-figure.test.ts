import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bandOf } from '../../shared/checks/band.ts';
import { judge, type Margin } from '../../shared/checks/check.ts';
import { gradeOf } from '../../shared/checks/states.ts';
import { besideOf, formatFigure, formatLimit } from '../../shared/quantities/printed-figure.ts';
import type { DecisionRule } from '../../shared/sheet/format.ts';
import { findUnit, toSI, type Unit } from '../../shared/units/units.ts';
import { walk } from '../walk.ts';

const unit = (symbol: string): Unit => findUnit(symbol) as Unit;
const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹';
/** `1×10⁻¹²` as `1e-12`. */
const plainly = (text: string): string =>
  text.replace(
    /×10([⁻⁰¹²³⁴-⁹]+)/g,
    (_, power: string) =>
      `e${[...power].map((sign) => (sign === '⁻' ? '-' : RAISED.indexOf(sign))).join('')}`,
  );
const numbers = (text: string): number[] =>
  (plainly(text).match(/[+-]?\d+(\.\d+)?(e-?\d+)?/g) ?? []).map(Number);

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
  // What value, spread and limits were typed in.
  typed: fc.constantFrom('mm', 'in', 'thou'),
  rule: fc.constantFrom<DecisionRule>('worst-case', 'iso14253-2013', 'iso14253-2017', 'simple'),
  value: fc.oneof(
    fc.double({ min: 0.01, max: 200, noNaN: true }),
    fc.integer({ min: 10, max: 99_999 }).map((n) => n / 1000),
  ),
  // So near the limits that a place decides.
  half: fc.oneof(
    fc.double({ min: 1e-5, max: 0.02, noNaN: true }),
    fc.integer({ min: 1, max: 40 }).map((n) => n / 1000),
  ),
  skew: fc.constantFrom(1, 1, 0.4),
  lower: fc.option(fc.oneof(fc.constant(0), near), { nil: undefined }),
  upper: fc.option(fc.oneof(fc.constant(0), near), { nil: undefined }),
  scale: fc.constantFrom(1e4, 1e4, 1e12),
  hair: fc.constantFrom(0, 0, 1e-7, -1e-7, 3e-5, -3e-5, 4e-4, -4e-4),
});

test('what is printed never reads smaller than it is, nor contradicts the verdict', () => {
  const tally = { all: 0, on: 0 };
  fc.assert(
    fc.property(cases, ({ symbol, typed, rule, value, half, skew, lower: a, upper: b, hair, scale }) => {
      const of = unit(symbol);
      const as = symbol === 'N' ? of : unit(typed);
      const si = (x: number): number => toSI(x, as);
      // As typed, and as worked out: with more places than anything is read to.
      const rounded = (x: number): number => Math.round(x * scale) / scale;
      const [below, above] = [half * skew, half];
      const ends = [
        a === undefined ? undefined : rounded(value - below + a * half + hair * half),
        b === undefined ? undefined : rounded(value + above + b * half + hair * half),
      ];
      const [lower, upper] = ends.map((one) => (one === undefined ? undefined : si(one)));
      if (lower !== undefined && upper !== undefined && lower >= upper) return;
      const low = si(value) - below * as.factor;
      const high = si(value) + above * as.factor;
      const figure = { value: si(value), low, high, centre: (low + high) / 2, u: (high - low) / 4 };
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
      const seen = readBack(text.value, text.spread);
      const beside = besideOf(figure, band);
      const limitText = (limit: number) => formatLimit(limit, of, { beside });
      const told = JSON.stringify({
        text: text.text,
        limits: [lower, upper].map((one) => (one === undefined ? '' : limitText(one))),
        state: check.asNew.state,
      });
      // No smaller than the true spread.
      const shown = (x: number): number => x / of.factor;
      const dust = 1e-8 * Math.max(1, shown(figure.value)) + 1e-9 * shown(high - low);
      expect(seen.high - seen.value, told).toBeGreaterThanOrEqual(shown(band.high - figure.value) - dust);
      expect(seen.value - seen.low, told).toBeGreaterThanOrEqual(shown(figure.value - band.low) - dust);
      const from = lower === undefined ? Number.NEGATIVE_INFINITY : (numbers(limitText(lower))[0] as number);
      const to = upper === undefined ? Number.POSITIVE_INFINITY : (numbers(limitText(upper))[0] as number);
      tally.all += 1;
      if ([band.low, band.high].some((end) => end === lower || end === upper)) tally.on += 1;
      if (rule === 'simple') [seen.low, seen.high] = [seen.value, seen.value];
      // A billionth of the spread is what arithmetic leaves of a limit at nothing.
      const hairs = 1e-12 * Math.max(1, shown(figure.value)) + 1e-9 * shown(high - low);
      const inside = seen.low >= from - hairs && seen.high <= to + hairs;
      const outside = seen.high < from - hairs || seen.low > to + hairs;
      switch (gradeOf(check.asNew.state)) {
        case 'in':
        case 'near':
          expect(inside, told).toBe(true);
          break;
        case 'open':
          expect(inside, told).toBe(false);
          expect(outside, told).toBe(false);
          break;
        case 'out':
          expect(outside, told).toBe(true);
      }
    }),
    { seed: 12, numRuns: walk(2500, 50_000) },
  );
  // Often enough on a limit.
  expect(tally.on / tally.all).toBeGreaterThan(0.05);
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
  // What stands next to it is told from it; what stands on it, in as many places as it is itself.
  const at = (value: number) => ({ value: value * inch, low: (value - 0.01) * inch, high: value * inch });
  expect(text(1.750033 * inch, 'in', at(1.750033))).toBe('1.7500 in');
  expect(text(1.750033 * inch, 'in', at(1.750031))).toBe('1.750033 in');
  expect(text(1.750033 * inch, 'in', at(1.7499))).toBe('1.75003 in');
});
