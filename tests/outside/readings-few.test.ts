import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import { expandedFactor } from '../../shared/statistics/coverage.ts';
import { expectedGreatest } from '../../shared/statistics/extremes.ts';
import { cell, computed, sheet } from './proof/sheets.ts';

const jStat: { studentt: { inv(p: number, dof: number): number } } = createRequire(import.meta.url)('jstat');

/** Two standard uncertainties of a normal figure, which few readings widen by Student's t. */
const SHARE = 0.9544997361036416;

test.each([1, 2, 3, 4, 9, 31, 100])('%d degrees of freedom: the factor of a statistics library', (dof) => {
  expect(expandedFactor(dof)).toBeCloseTo(jStat.studentt.inv((1 + SHARE) / 2, dof), 5);
});

// NIST Technical Note 1297, Table B.1, and JCGM 100:2008, Table G.2: t for a fraction of 95.45 %.
test.each([
  [1, 13.97],
  [2, 4.53],
  [3, 3.31],
  [4, 2.87],
  [5, 2.65],
  [6, 2.52],
  [7, 2.43],
  [8, 2.37],
  [9, 2.32],
  [10, 2.28],
  [15, 2.18],
  [20, 2.13],
  [30, 2.09],
  [50, 2.05],
  [100, 2.025],
])('%d degrees of freedom: the factor of the published table, %d', (dof, t) => {
  expect(Math.abs(expandedFactor(dof) - t)).toBeLessThanOrEqual(0.0051);
});

// JCGM 100:2008, 4.4.3 and Table 1: twenty readings, their mean, and the standard uncertainty of it, as published; the readings
// themselves are from memory (they come to the published mean and deviation). Taken as millimetres here.
test('twenty published readings have the mean and the standard uncertainty published with them', () => {
  const values = [
    96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95,
    101.11, 101.2, 101.57, 101.84, 102.36, 102.72,
  ];
  const entry = `${values.map((one) => one.toFixed(6)).join('; ')} mm`;
  const { value, u, dof } = computed(sheet([cell('bore', 'measured', entry)])).figure('bore');
  expect(value * 1e3).toBeCloseTo(100.145, 3);
  expect(u * 1e3).toBeCloseTo(0.333, 3);
  expect(dof).toBeCloseTo(19, 2);
});

// ISO 14253-2:2011, 8.2, safety factor h for type A with n readings (from memory): U = 2 h s / sqrt n.
test.each([
  [2, 7],
  [3, 2.3],
  [4, 1.7],
  [5, 1.4],
  [6, 1.3],
  [7, 1.3],
  [8, 1.2],
  [9, 1.2],
])('%d readings: twice the uncertainty times %d', (n, h) => {
  expect(expandedFactor(n - 1) / 2).toBeCloseTo(h, 1);
});

test('a list says its mean to t s / sqrt n (JCGM 100:2008, 4.2.3 and G.3.2)', () => {
  const values = [50.001, 50.004, 49.999, 50.002, 50.0];
  const entry = `${values.map((one) => one.toFixed(6)).join('; ')} mm`;
  const { value, low, high, u, dof } = computed(sheet([cell('bore', 'measured', entry)])).figure('bore');
  const mean = values.reduce((a, b) => a + b) / 5;
  const s = Math.sqrt(values.reduce((sum, one) => sum + (one - mean) ** 2, 0) / 4);
  expect(value * 1e3).toBeCloseTo(mean, 9);
  expect(u * 1e3).toBeCloseTo(s / Math.sqrt(5), 6);
  expect(dof).toBeCloseTo(4, 3);
  const reach = jStat.studentt.inv((1 + SHARE) / 2, 4) * (s / Math.sqrt(5));
  expect((high - low) * 500).toBeCloseTo(reach, 5);
});

test('a temperature without ± is known to half its last figure (JCGM 100:2008, F.2.2.1: resolution)', () => {
  const read = (at: string) =>
    computed(
      sheet([
        {
          id: 'steel',
          role: 'cell',
          kind: 'material',
          edition: 1,
          name: 'steel',
          inputs: { material: '1045' },
        } as never,
        cell('bore', 'measured', '100.000 mm ± 0.000001 mm', { at, material: 'steel' }),
      ]),
    ).figure('bore');
  const [bare, stated] = [read('30 degC'), read('30 degC ± 0.0001 K')];
  // 11.x um/m K over half a kelvin of 100 mm: above half a micrometre either way.
  expect((bare.high - bare.low - (stated.high - stated.low)) / 2).toBeGreaterThan(0.5e-6);
  expect(bare.value).toBeCloseTo(stated.value, 12);
});

// Factor d2 of control charts, the mean range of n normal figures (ISO 7870-2:2013; from memory).
test.each([
  [2, 1.128],
  [3, 1.693],
  [4, 2.059],
  [5, 2.326],
  [6, 2.534],
  [8, 2.847],
  [10, 3.078],
  [25, 3.931],
])('the greatest and the least of %d readings lie %d standard deviations apart', (n, d2) => {
  expect(2 * expectedGreatest(n)).toBeCloseTo(d2, 3);
});
