import { describe, expect, it } from 'vitest';
import { inside, MM, mean, outside, UM, workOut } from './shelf.ts';

/**
 * Recomputed by hand: the bond by F = pi d L tau f (reference R699), the sleeve by Lame (Budynas & Nisbett, Shigley's
 * Mechanical Engineering Design, 9e, Eq. 3-56) from the figures of the material table.
 */
describe('loose bearing ring bonded or sleeved', () => {
  const name = 'loose-bearing-ring-bonded.json';
  const sheet = workOut(name);
  const ring = mean(84.994, 84.993, 84.992, 84.994) * MM;
  const housing = mean(85.062, 85.094, 85.074, 85.058, 85.081, 85.068) * MM;
  const area = Math.PI * ring * 19 * MM;

  it('gap: mean for how far off centre, widest for the compound', () => {
    expect(sheet.value('off_centre')).toBeCloseTo((housing - ring) / 2, 12);
    expect(sheet.value('widest')).toBeCloseTo(85.094 * MM - ring, 12);
    expect(sheet.value('gap_spare')).toBeCloseTo(0.2 * MM - (85.094 * MM - ring), 12);
  });

  it('bond: half of the strength counts cold, three quarters of that running, the whole against the press', () => {
    expect(sheet.value('bond', 'force_held')).toBeCloseTo(area * 16e6 * 0.5, 6);
    expect(sheet.value('bond', 'hot_torque')).toBeCloseTo((area * 16e6 * 0.5 * 0.75 * ring) / 2, 6);
    expect(sheet.value('comes_out')).toBeCloseTo(area * 16e6, 6);
    const { low, high } = sheet.figure('bond', 'hot_force');
    expect(low).toBeLessThanOrEqual(area * 12e6 * 0.5 * 0.65 + 50);
    expect(high).toBeGreaterThanOrEqual(area * 20e6 * 0.5 * 0.85 - 50);
  });

  it('sleeve: steel ring in the iron housing, torque by the friction taken', () => {
    const D = 91 * MM;
    const give = inside(D, 85.0175 * MM, 0.29) / 205e9 + outside(125 * MM, D, 0.211) / 100e9;
    const pressure = (75 * UM) / (D * give);
    expect(sheet.value('fit', 'pressure') / pressure).toBeCloseTo(1, 6);
    const torque = (sheet.value('fit', 'friction_taken') * Math.PI * D ** 2 * 19 * MM * pressure) / 2;
    expect(sheet.value('fit', 'torque_held') / torque).toBeCloseTo(1, 6);
    expect(sheet.value('bond_to_sleeve') / (sheet.value('bond', 'hot_torque') / torque)).toBeCloseTo(1, 6);
  });

  it('a housing worn past the gap of the compound is one to sleeve', () => {
    const worn = workOut(name, { housing: '85.14; 85.26 | 85.12; 85.23 mm' });
    expect(worn.state('gap_spare')).toBe('misses');
    expect(worn.state('off_centre')).toBe('out of limits');
    expect(worn.state('ring_clearance')).toMatch(/^holds/);
  });

  it('a compound that keeps a tenth of its strength hot lets the thrust go', () => {
    expect(workOut(name, { 'bond.hot_share': '0.10' }).state('bond', 'hot_force')).toBe('misses');
    expect(workOut(name, { 'bond.hot_share': '0.10' }).state('bond', 'force_held')).toBe(
      'holds by calculation',
    );
  });
});
