import { describe, expect, test } from 'vitest';
import { figure, given, sheetOf, worked } from './sheet-of.ts';

const inch = (si: number) => si / 0.0254;

/** Limits in a tolerance are rectangular here; the root-sum-square of the rows is that of the limits, root 3 times it. */
const rss = (u: number) => u * Math.sqrt(3);

describe('shouldered screw and three sleeves, Shigley 9e Example 1-3 p. 20', () => {
  const sheet = sheetOf(
    {
      a: given('length', '1.750 in ± 0.003 in'),
      b: given('length', '0.750 in ± 0.001 in'),
      c: given('length', '0.120 in ± 0.005 in'),
      d: given('length', '0.875 in ± 0.001 in'),
      gap: worked('length', '= a - b - c - d'),
    },
    { length: 'in' },
  );
  test('R644 mean gap 0.005 in (seen)', () => {
    expect(inch(figure(sheet, 'gap').value)).toBeCloseTo(0.005, 9);
  });
  test('R646, R647 greatest 0.015 in, least -0.005 in (seen)', () => {
    expect(inch(figure(sheet, 'gap').high)).toBeCloseTo(0.015, 9);
    expect(inch(figure(sheet, 'gap').low)).toBeCloseTo(-0.005, 9);
  });
  test('R649 by root sum square 0.006 in (computed; Scholz, Tolerance Stack Analysis Methods, 1995)', () => {
    expect(inch(rss(figure(sheet, 'gap').u))).toBeCloseTo(0.006, 8);
  });
});

describe('ten parts each ±0.1 mm', () => {
  const names = Array.from({ length: 10 }, (_, i) => `part_${i + 1}`);
  const sheet = sheetOf({
    ...Object.fromEntries(names.map((name) => [name, given('length', '10 mm ± 0.1 mm')])),
    stack: worked('length', `= ${names.join(' + ')}`),
    inflated: worked('length', `= 1.5 * (${names.join(' + ')})`),
  });
  test('R651 worst case ±1.0 mm, root sum square 0.316228 mm (computed)', () => {
    const stack = figure(sheet, 'stack');
    expect((stack.high - stack.value) * 1000).toBeCloseTo(1, 9);
    expect((stack.value - stack.low) * 1000).toBeCloseTo(1, 9);
    expect(rss(stack.u) * 1000).toBeCloseTo(0.316228, 6);
  });
  test('R652 inflated 1.5 times 0.474342 mm (computed; Bender factor, Scholz report)', () => {
    expect(rss(figure(sheet, 'inflated').u) * 1000).toBeCloseTo(0.474342, 6);
  });
});
