import { describe, expect, it } from 'vitest';
import { MM, UM, workOut } from './shelf.ts';

/** Recomputed by hand from the sizes and the handbook formulas. */
describe('line-bored housing realigned', () => {
  const name = 'line-bored-housing.json';
  const sheet = workOut(name);

  it('bores both to the size at which the worse cleans up', () => {
    const near = 60.148 + 2 * 0.09 + 0.05;
    const far = 60.117 + 2 * 0.07 + 0.05;
    expect(near).toBeGreaterThan(far);
    expect(sheet.value('bore')).toBeCloseTo(near * MM, 10);
  });

  it('centre distance and backlash follow the shift', () => {
    const distance = Math.hypot(120 + 0.025, 0.035) * MM;
    expect(sheet.value('axis', 'new_distance')).toBeCloseTo(distance, 12);
    // Usual approximation: 2 x opening x tan(pressure angle), and the thinning of the teeth.
    const usual = 2 * (distance - 120 * MM) * Math.tan((20 * Math.PI) / 180) + 0.15 * MM;
    expect(Math.abs(sheet.value('mesh', 'backlash') - usual)).toBeLessThan(2 * UM);
  });

  it('a far bore that is worn more moves both bores and the bush', () => {
    const worn = workOut(name, { far_found: '60.150; 60.302 mm' });
    expect(worn.value('bore')).toBeCloseTo((60.302 + 0.14 + 0.05) * MM, 10);
    expect(worn.value('bush_outside') - worn.value('bore')).toBeCloseTo(40 * UM, 12);
  });
});
