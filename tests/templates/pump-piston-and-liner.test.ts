import { describe, expect, it } from 'vitest';
import { DEG_F, IN, mean, THOU, workOut } from './shelf.ts';

// Gray iron of both classes and tin bronze as the material table has them.
const IRON = 11.4e-6;
const BRONZE = 19.8e-6;

/** Recomputed by hand from the sizes; the circle of a ring by pi d, growth by d alpha dT, each part at its temperature. */
describe('pump piston and liner with rings', () => {
  const name = 'pump-piston-and-liner.json';
  const sheet = workOut(name);
  const liner = 4.5132 + 2 * 0.0002 + 0.0015;

  it('as found: a new ring would open and close by pi times the wear', () => {
    expect(sheet.value('worn_by')).toBeCloseTo((4.5132 - 4.5061) * IN, 10);
    expect(sheet.value('gap_left')).toBeCloseTo((0.019 + Math.PI * 0.0071) * IN, 10);
  });

  it('liner cleans up; piston nine thou under it; room behind the ring', () => {
    expect(sheet.value('liner')).toBeCloseTo(liner * IN, 10);
    expect(sheet.value('piston')).toBeCloseTo((liner - 0.009) * IN, 10);
    const thick = mean(0.1405, 0.1404);
    const floor = liner - 2.3 * thick;
    expect(sheet.value('groove_floor')).toBeCloseTo(floor * IN, 10);
    expect(sheet.value('behind')).toBeCloseTo(((liner - 0.009 - floor) / 2 - thick) * IN, 10);
    expect(sheet.value('side_clearance')).toBeCloseTo(((0.001 + 0.0025) / 2) * IN, 10);
    expect(sheet.value('wall', 'thinnest')).toBeCloseTo(((5 - liner) / 2 - 0.01) * IN, 10);
  });

  it('running: warm piston and ring in a cold liner', () => {
    expect(sheet.value('cylinder', 'piston_clearance')).toBeCloseTo(9 * THOU, 10);
    const bore = liner * (1 + IRON * 2 * DEG_F);
    const piston = (liner - 0.009) * (1 + BRONZE * 22 * DEG_F);
    expect(Math.abs(sheet.value('cylinder', 'hot_clearance') - (bore - piston) * IN)).toBeLessThan(1e-9);
    const ring = (Math.PI * liner - 0.019) * (1 + IRON * 22 * DEG_F);
    expect(Math.abs(sheet.value('cylinder', 'hot_gap') - (Math.PI * bore - ring) * IN)).toBeLessThan(
      0.02 * THOU,
    );
  });

  it('once the liner is honed to a size, piston and groove floor go with it', () => {
    const honed = workOut(name, {}, { liner: '4.5163; 4.5165 | 4.5164; 4.5164 in ± 0.0001 in' });
    expect(honed.value('piston')).toBeCloseTo((4.5164 - 0.009) * IN, 9);
    expect(honed.value('cylinder', 'piston_clearance')).toBeCloseTo(9 * THOU, 9);
  });

  it('a gap filed eight thou too wide is found out, and so is a liner past its largest bore', () => {
    expect(workOut(name, {}, { ring_gap: '0.027 in ± 0.0005 in' }).state('ring_gap')).toBe('out of limits');
    expect(workOut(name, { liner_found: '4.561; 4.566 in' }).state('liner')).toBe('misses');
    expect(workOut(name, { 'wall.offset': '0.040 in ± 0.005 in' }).state('wall', 'thinnest')).toBe('misses');
  });
});
