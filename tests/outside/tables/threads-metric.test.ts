import { describe, expect, it } from 'vitest';
import {
  pitchDiameterRows,
  pitchDiameterTolerance,
  pitchRows,
} from '../../../cells/tables/threads/metric-limits.ts';
import { percentOfThread } from '../../../cells/tables/threads/threads.ts';
import { rowsWhere, titleOf } from './reference.ts';
import { thread } from './thread.ts';

const mms = (metres: number | undefined): number => Math.round(metres! * 1e6) / 1e3;

describe('metric threads against print', () => {
  for (const row of rowsWhere((each) => each.quantity.includes('pitch dia d2, minor dia D1')))
    it(titleOf(row), () => {
      const printed = row.expected as { d2: number; D1: number; As_mm2: number; As_table: number };
      const { d, P } = row.inputs as { d: number; P: number };
      const ours = thread(`M${d}`);
      expect(mms(ours.pitch)).toBe(P);
      expect(ours.series).toBe('M coarse');
      expect(Math.abs(mms(ours.pitchDiameter) - printed.d2)).toBeLessThan(5e-4);
      expect(Math.abs(mms(ours.minor) - printed.D1)).toBeLessThan(1e-3);
      expect(Math.abs((ours.stressArea * 1e6) / printed.As_mm2 - 1)).toBeLessThan(5e-3);
      expect(Math.abs((ours.stressArea * 1e6) / printed.As_table - 1)).toBeLessThan(5e-3);
    });

  for (const row of rowsWhere((each) => each.quantity.includes('tap drill and 6H minor diameter maximum')))
    it(titleOf(row), () => {
      const printed = row.expected as { tap_drill_mm: number; D1_6H_max: number; thread_percent: number };
      const { d, P } = row.inputs as { d: number; P: number };
      const ours = thread(`M${d}x${P}-6H`);
      expect(mms(ours.tapDrill!.diameter)).toBe(printed.tap_drill_mm);
      expect(mms(ours.limits!.minor!.max)).toBeCloseTo(printed.D1_6H_max, 3);
      expect(percentOfThread(ours.major, ours.pitch, ours.tapDrill!.diameter)).toBeCloseTo(
        printed.thread_percent,
        1,
      );
    });

  /** 6g major least and greatest, pitch least and greatest; 6H pitch greatest, minor greatest. */
  const printed6 = `
M6 5.794 5.974 5.212 5.324 5.500 5.153
M8 7.760 7.972 7.042 7.160 7.348 6.912
M10 9.732 9.968 8.862 8.994 9.206 8.676
M12 11.701 11.966 10.679 10.829 11.063 10.441
M16 15.682 15.962 14.503 14.663 14.913 14.210
M20 19.623 19.958 18.164 18.334 18.600 17.744`;
  for (const line of printed6.trim().split('\n')) {
    const [size, ...figures] = line.split(' ');
    it(`${size} 6g and 6H limits [ISO 965-2] from memory`, () => {
      const bolt = thread(`${size}-6g`).limits!;
      const nut = thread(`${size}-6H`).limits!;
      expect(
        [bolt.major!.min, bolt.major!.max, bolt.pitch.min, bolt.pitch.max, nut.pitch.max, nut.minor!.max].map(
          mms,
        ),
      ).toEqual(figures.map(Number));
    });
  }

  it('tabulated tolerances lie by their formulas (ISO 965-1): a second method, recomputed', () => {
    for (const [P, row] of pitchRows) {
      const minor6 = P < 1 ? 433 * P - 190 * P ** 1.22 : 230 * P ** 0.7;
      if (row.minor.has(6)) expect(Math.abs(row.minor.get(6)! / minor6 - 1), `TD1 ${P}`).toBeLessThan(0.045);
      const major6 = 180 * P ** (2 / 3) - 3.15 / Math.sqrt(P);
      expect(Math.abs(row.major.get(6)! / major6 - 1), `Td ${P}`).toBeLessThan(0.055);
      expect(Math.abs(row.g - (15 + 11 * P)), `g ${P}`).toBeLessThanOrEqual(3.1);
      if (!Number.isNaN(row.f)) expect(Math.abs(row.f - (30 + 11 * P)), `f ${P}`).toBeLessThanOrEqual(12);
      for (const [table, grade, factor] of [
        [row.minor, 4, 0.63],
        [row.minor, 5, 0.8],
        [row.minor, 7, 1.25],
        [row.minor, 8, 1.6],
        [row.major, 4, 0.63],
        [row.major, 8, 1.6],
      ] as const)
        if (table.has(grade) && table.has(6))
          expect(
            Math.abs(table.get(grade)! / table.get(6)! / factor - 1),
            `grade ${grade} ${P}`,
          ).toBeLessThan(0.04);
    }
    const bounds = [0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45, 90, 180, 355];
    for (const [i, row] of pitchDiameterRows.entries())
      for (const [P, { external, internal }] of row.by) {
        const formula = 90 * P ** 0.4 * Math.sqrt(bounds[i]! * bounds[i + 1]!) ** 0.1;
        expect(Math.abs(external / formula - 1), `Td2 ${P} to ${row.to}`).toBeLessThan(0.045);
        if (!Number.isNaN(internal))
          expect(Math.abs(internal / (1.32 * formula) - 1), `TD2 ${P} to ${row.to}`).toBeLessThan(0.055);
      }
  });

  it('other grades: M8 has Td2 75, 95, 118, 150, 190 in grades 4 to 8 and TD2 100, 125, 160, 200, 250 [ISO 965-1] from memory', () => {
    expect([4, 5, 6, 7, 8].map((grade) => pitchDiameterTolerance(8, 1.25, grade, false))).toEqual([
      75, 95, 118, 150, 190,
    ]);
    expect([4, 5, 6, 7, 8].map((grade) => pitchDiameterTolerance(8, 1.25, grade, true))).toEqual([
      100, 125, 160, 200, 250,
    ]);
  });
});
