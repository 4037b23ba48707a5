import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { coverageFactor } from '../../shared/statistics/coverage.ts';

// jStat is a general statistics library; the tables are JCGM 100:2008 Table G.2.
const jStat: { studentt: { inv(p: number, dof: number): number } } = createRequire(import.meta.url)('jstat');

describe('coverage factors', () => {
  test.each([
    [1, 12.71],
    [2, 4.3],
    [5, 2.57],
    [8, 2.31],
    [10, 2.23],
    [16, 2.12],
    [20, 2.09],
    [50, 2.01],
    [100, 1.984],
    [Number.POSITIVE_INFINITY, 1.96],
  ])('at %d degrees of freedom: %d for 95 %% (JCGM 100, Table G.2)', (dof, k) => {
    expect(Math.abs(coverageFactor(dof) - k)).toBeLessThan(dof > 50 ? 5e-4 : 5e-3);
  });

  test.each([
    [1, 0.99, 63.66],
    [4, 0.99, 4.6],
    [16, 0.99, 2.92],
    [16, 0.9545, 2.17],
    [Number.POSITIVE_INFINITY, 0.9973, 3],
  ])('at %d degrees of freedom and p = %d: %d (JCGM 100, Table G.2)', (dof, p, k) => {
    expect(Math.abs(coverageFactor(dof, p) - k)).toBeLessThan(5e-3);
  });

  test('agree with a general statistics library between whole degrees too', () => {
    for (const dof of [1, 1.5, 2, 3.7, 8, 16.75, 40, 250])
      for (const p of [0.5, 0.9, 0.95, 0.9545, 0.99]) {
        const k = jStat.studentt.inv((1 + p) / 2, dof);
        expect(Math.abs(coverageFactor(dof, p) - k), `${dof} ${p}`).toBeLessThan(1e-6 * k);
      }
  });

  test('there is none without degrees of freedom', () => {
    expect(coverageFactor(0)).toBeNaN();
  });
});
