import { describe, expect, it } from 'vitest';
import { MM, UM, workOut } from './shelf.ts';

/** Recomputed by hand from the sizes and the handbook formulas. */
describe('worn dowel hole plugged and drilled again', () => {
  const name = 'dowel-hole-plugged.json';
  const sheet = workOut(name);
  const dowel = 12.014;

  it('tap drill 16.5 mm over a hole of 12.31 mm that lies 0.1 mm off', () => {
    expect(sheet.value('clean')).toBeCloseTo((16.5 - 12.31 - 0.2) * MM, 10);
  });

  it('wall of the plug: root of M18 x 1.5, 16.160 mm (ISO 724), less the dowel', () => {
    const place = sheet.value('place');
    expect(place).toBeCloseTo(((12.026 - dowel + 0.008) / 2) * MM, 10);
    expect(sheet.value('plug_wall')).toBeCloseTo(((16.16 - dowel) / 2) * MM - place, 6);
  });

  it('dowel tight in the plug, sliding in the sound part', () => {
    expect(sheet.value('tight') / UM).toBeCloseTo((dowel - 12.006) * 1000, 6);
    expect(sheet.value('dowel_shear') / 1e6).toBeCloseTo(6000 / ((Math.PI / 4) * dowel ** 2), 6);
  });

  it('a hole worn past the tap drill, a worn jig and a thin plug are found out', () => {
    expect(workOut(name, { hole_found: '16.42; 16.31 mm ± 0.02 mm' }).state('clean')).toBe('misses');
    expect(workOut(name, { mate_hole: '12.071; 12.083 mm ± 0.004 mm' }).state('mate_hole')).toBe(
      'out of limits',
    );
    expect(workOut(name, { 'plug.thread': 'M16x1.5' }).state('plug_wall')).toBe('misses');
  });
});
