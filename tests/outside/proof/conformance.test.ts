import { createRequire } from 'node:module';
import { describe, expect, it, test } from 'vitest';
import { judge } from '../../../shared/checks/check.ts';
import type { CellRecord, DecisionRule } from '../../../shared/sheet/format.ts';
import { cell, computed, drawn, readings, sheet } from './sheets.ts';

/** A general statistics library; ships without types. */
const jStat: {
  studentt: { cdf(x: number, dof: number): number; inv(p: number, dof: number): number };
  normal: { cdf(x: number, mean: number, deviation: number): number };
} = createRequire(import.meta.url)('jstat');

const DRAWS = 400_000;
/** Four standard errors of a share. */
const chance = (p: number): number => 4 * Math.sqrt((p * (1 - p)) / DRAWS) + 1e-5;

/** The mean of a list against an upper limit; the limits of the list itself are for every reading in it. */
const meanOf = (list: string, upper: string): CellRecord[] => [
  cell('gauge', 'cell', '', {
    kind: 'gauge',
    inputs: {
      gauge: 'micrometer-25-50-mm',
      certificate: '1e-6 mm',
      setting_doubt: '0 mm',
      scatter: '0 mm',
      division: '0.0001 mm',
    },
  }),
  cell('bore', 'measured', list, { gauge: 'gauge' }),
  cell('mean', 'worked', '= bore.mean', { limits: { upper } }),
];

describe('one limit, a figure of few degrees of freedom: JCGM 106:2012 7.3 with Student’s t (JCGM 101, 6.4.9; clauses from memory)', () => {
  test.each([1, 2, 4, 9, 29, 200])(
    '%d: proven in limits from the 95 % point of t on, by a statistics library',
    (dof) => {
      const edge = jStat.studentt.inv(0.95, dof);
      const state = (centre: number) =>
        judge({
          mode: 'part',
          rule: 'iso14253-2017',
          upper: { value: centre, low: centre - 20, high: centre + 20, centre, u: 1, dof },
        }).asNew.state;
      expect(state(edge * 1.0001)).toMatch(/^proven in/);
      expect(state(edge * 0.9999)).toBe('not proven');
      expect(state(-edge * 0.9999)).toBe('not proven');
      expect(state(-edge * 1.0001)).toBe('out of limits');
    },
  );

  test.each<[DecisionRule]>([['worst-case'], ['simple']])(
    '%s names its own factor, whatever the degrees of freedom',
    (rule) => {
      const at = (dof: number) => {
        const margin = { value: 2.1, low: 0.1, high: 4.1, centre: 2.1, u: 1, dof };
        return judge({ mode: 'part', rule, lower: margin }).asNew.state;
      };
      expect(at(2)).toBe(at(Number.POSITIVE_INFINITY));
      expect(at(2)).toMatch(/^proven in/);
    },
  );

  test.each([1, 2, 4, 9, 29])(
    '%d: twice the uncertainty becomes Student’s t of the same share, by a statistics library (ISO 14253-2, few readings)',
    (dof) => {
      const edge = jStat.studentt.inv(1 - (1 - 0.9544997361) / 2, dof);
      const state = (value: number) =>
        judge({
          mode: 'part',
          rule: 'iso14253-2013',
          lower: { value, low: value - 20, high: value + 20, centre: value, u: 1, dof },
        }).asNew.state;
      expect(state(edge * 1.0001)).toMatch(/^proven in/);
      expect(state(edge * 0.9999)).toBe('not proven');
    },
  );

  it('through the engine: five readings, 1.6449 of their uncertainty from the limit, do not prove what many would', () => {
    const list = readings(50, 0.004, 5, 'mm');
    const judged = (upper: number) =>
      computed(sheet(meanOf(list, `${upper.toFixed(9)} mm`), { rule: 'iso14253-2017' }));
    const { u, dof } = judged(51).figure('mean');
    // s / sqrt 5 and the division of the gauge, which has no end of degrees of freedom; so few more than four.
    expect(dof).toBeGreaterThanOrEqual(4);
    expect(dof).toBeLessThan(4.1);
    const stateAt = (times: number) =>
      judged(50 + times * u * 1e3).result('mean').outputs.value?.check.asNew.state;
    const edge = jStat.studentt.inv(0.95, dof);
    expect(stateAt(1.7)).toBe('not proven');
    expect(stateAt(edge - 1e-3)).toBe('not proven');
    expect(stateAt(edge + 1e-3)).toMatch(/^proven in/);
  });

  it('and by draws', () => {
    const list = readings(50, 0.004, 5, 'mm');
    const file = sheet(meanOf(list, '50.003 mm'));
    const { u, dof } = computed(file).figure('mean');
    const expected = jStat.studentt.cdf(3e-6 / u, dof);
    const { conformance } = drawn(file, 'mean', DRAWS);
    expect(Math.abs((conformance?.within as number) - expected)).toBeLessThan(chance(expected));
    expect(conformance?.aboveUpper).toBeCloseTo(1 - (conformance?.within as number), 10);
    expect(conformance?.belowLower).toBeUndefined();
  });
});

describe('limits that are formulas and have spread of their own', () => {
  // A bush whose limits depend on the bore it goes into, both read: margins share the bore's doubt.
  const cells = (bore: string, bush: string, limits: CellRecord['limits']): CellRecord[] => [
    cell('bore', 'measured', bore),
    cell('bush', 'measured', bush, { limits: limits as NonNullable<CellRecord['limits']> }),
  ];

  test('conformance is that of the difference, by a statistics library', () => {
    const file = sheet(
      cells('50.000 mm ± 0.004 mm', '50.022 mm ± 0.003 mm', {
        lower: '= bore + 0.018 mm',
        upper: '= bore + 0.030 mm',
      }),
    );
    const u = Math.hypot(0.004 / 2, 0.003 / 2);
    const below = jStat.normal.cdf(0.018, 0.022, u);
    const above = 1 - jStat.normal.cdf(0.03, 0.022, u);
    const { conformance } = drawn(file, 'bush', DRAWS);
    expect(Math.abs((conformance?.belowLower as number) - below)).toBeLessThan(chance(below));
    expect(Math.abs((conformance?.aboveUpper as number) - above)).toBeLessThan(chance(above));
    expect(conformance?.within).toBeCloseTo(
      1 - (conformance?.belowLower as number) - (conformance?.aboveUpper as number),
      10,
    );
  });

  test.each<[DecisionRule, number]>([
    ['iso14253-2013', 2],
    // One-sided 95 % point, by a statistics library below.
    ['iso14253-2017', 1.6448536],
  ])('under %s the guard band is %d of the difference, not of the bush alone', (rule, k) => {
    const u = Math.hypot(0.004 / 2, 0.003 / 2);
    const state = (gap: number) =>
      computed(
        sheet(
          cells('50.000 mm ± 0.004 mm', `${(50.018 + gap).toFixed(9)} mm ± 0.003 mm`, {
            lower: '= bore + 0.018 mm',
          }),
          { rule },
        ),
      ).result('bush').outputs.value?.check.asNew.state;
    expect(state(k * u * 1.001)).toMatch(/^proven in/);
    expect(state(k * u * 0.999)).toBe('not proven');
    expect(state(-k * u * 0.999)).toBe('not proven');
    expect(state(-k * u * 1.001)).toBe('out of limits');
    if (rule === 'iso14253-2017') expect(jStat.normal.cdf(k, 0, 1)).toBeCloseTo(0.95, 7);
  });

  test('what a size shares with its own limit drops out of the check', () => {
    const shared = (limit: string) =>
      computed(
        sheet(
          [
            cell('bore', 'measured', '50.000 mm ± 0.010 mm'),
            cell('bush', 'worked', '= bore + 0.020 mm', { basis: 'geometry', limits: { lower: limit } }),
          ],
          { rule: 'iso14253-2013' },
        ),
      ).result('bush').outputs.value?.check.asNew.state;
    // The bore's doubt is in both and in neither: nothing is left to straddle the limit. The size written in is a plan.
    expect(shared('= bore + 0.019 mm')).toBe('holds');
    expect(shared('50.019 mm')).toBe('may miss');
  });
});
