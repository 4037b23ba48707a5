import { describe, expect, it } from 'vitest';
import { gaugeByKey, gauges } from '../../../cells/tables/gauges/gauges.ts';
import { nextOversize, nextUndersize, undersizeSeries } from '../../../cells/tables/undersizes.ts';
import { rowById, titleOf } from './reference.ts';

describe('gauges', () => {
  it('outside micrometers keep to 4 um + L/50 mm by range [ISO 3611:1978] from memory', () => {
    for (const [key, expected] of [
      ['micrometer-0-25-mm', 4],
      ['micrometer-25-50-mm', 4],
      ['micrometer-50-75-mm', 5],
      ['micrometer-75-100-mm', 5],
      ['micrometer-100-150-mm', 6],
    ] as const)
      expect(gaugeByKey(key)!.permissible_error.value).toBeCloseTo(expected * 1e-6, 15);
  });

  it('a calliper read to 0.05 mm is judged as the published budget judges one: half a division of 25 um, mechanical effects of 50 um', () => {
    // EA-4/02 S10 takes a resolution of 0.05 mm and limits of +-50 um for mechanical effects.
    const { readout_half_um, mech_half_um } = rowById('R109').inputs as {
      readout_half_um: number;
      mech_half_um: number;
    };
    const ours = gaugeByKey('calliper-vernier-mm')!;
    expect(ours.resolution.value / 2).toBeCloseTo(readout_half_um * 1e-6, 12);
    expect(ours.permissible_error.value).toBeCloseTo(mech_half_um * 1e-6, 12);
    expect(titleOf(rowById('R109'))).toContain('EA-4/02');
  });

  it('every figure is marked an assumption from memory, and each key stands once', () => {
    const keys = gauges.map((each) => each.key);
    expect(new Set(keys).size).toBe(keys.length);
    for (const { key, range, resolution, permissible_error, setting_error, repeatability } of gauges) {
      expect(range[0], key).toBeLessThan(range[1]);
      expect(permissible_error.value, key).toBeGreaterThan(0);
      expect(repeatability.value, key).toBeGreaterThan(0);
      for (const p of [resolution, permissible_error, setting_error, repeatability]) {
        expect(p.source, key).toMatch(/^from memory: assumption/);
        expect(p.low, key).toBe(p.value);
        expect(p.high, key).toBe(p.value);
        expect(p.value, key).toBeGreaterThanOrEqual(0);
      }
    }
  });

  it('an inch gauge and its metric twin agree within a factor of three', () => {
    for (const [a, b] of [
      ['micrometer-0-1-in', 'micrometer-0-25-mm'],
      ['dial-bore-gauge-in', 'dial-bore-gauge-mm'],
      ['depth-micrometer-in', 'depth-micrometer-mm'],
      ['calliper-digital-in', 'calliper-digital-mm'],
      ['telescoping-gauge-in', 'telescoping-gauge-mm'],
      ['feeler-in', 'feeler-mm'],
    ] as const)
      for (const column of ['permissible_error', 'repeatability'] as const) {
        const quotient = gaugeByKey(a)![column].value / gaugeByKey(b)![column].value;
        expect(quotient, `${a} ${column}`).toBeGreaterThan(1 / 3);
        expect(quotient, `${a} ${column}`).toBeLessThan(3);
      }
  });
});

describe('standard undersizes (common practice, no source)', () => {
  const inch = (x: number): number => x * 0.0254;
  it('takes the next step that cleans up, and a step that just does', () => {
    expect(nextUndersize(inch(2), inch(1.9851), 'inch')).toEqual({
      under: inch(0.02),
      size: inch(2) - inch(0.02),
      number: 2,
    });
    expect((nextUndersize(inch(2), inch(1.97), 'inch') as { under: number }).under).toBe(inch(0.03));
    expect((nextUndersize(0.05, 0.0494, 'mm') as { under: number }).under).toBeCloseTo(0.00075, 12);
    expect((nextUndersize(inch(2), inch(2), 'inch') as { number: number }).number).toBe(1);
    expect((nextOversize(0.08, 0.0803, 'mm') as { size: number }).size).toBeCloseTo(0.0805, 12);
  });

  it('says when no step reaches, with the remedy', () => {
    expect((nextUndersize(inch(2), inch(1.93), 'inch') as { problem: string }).problem).toMatch(
      /0\.0700 in.*1\.52 mm.*Build the journal up/,
    );
    expect((nextOversize(0.08, 0.082, 'mm') as { problem: string }).problem).toMatch(/Sleeve the bore/);
    expect((nextUndersize(Number.NaN, 1, 'inch') as { problem: string }).problem).toMatch(/not known yet/);
  });

  it('steps rise and the two systems keep pace', () => {
    for (const steps of Object.values(undersizeSeries))
      expect([...steps].sort((a, b) => a - b)).toEqual(steps);
    undersizeSeries.inch.forEach((step, i) => {
      expect(Math.abs(step / undersizeSeries.mm[i]! - 1)).toBeLessThan(0.02);
    });
  });
});
