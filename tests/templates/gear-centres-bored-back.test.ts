import { describe, expect, it } from 'vitest';
import { MM, mean, UM, workOut } from './shelf.ts';

const ALPHA = (20 * Math.PI) / 180;

/** Angle whose cosine is that of the pressure angle times standard over running centre distance. */
const running = (centre: number): number => Math.acos((120 * Math.cos(ALPHA)) / centre);

/**
 * Backlash at the running pitch circle from the tooth thicknesses there (any gear handbook, such as Dudley; from
 * memory): s' = d' (pi / 2 z + inv a - inv a'), the pitch less both, mm.
 */
const backlash = (centre: number, thinning: number): number => {
  const involute = (angle: number) => Math.tan(angle) - angle;
  const of = (teeth: number) => (2 * centre * teeth) / 80;
  const thick = (teeth: number) =>
    of(teeth) * (Math.PI / (2 * teeth) + involute(ALPHA) - involute(running(centre)));
  return (Math.PI * of(26)) / 26 - thick(26) - thick(54) + (thinning * centre) / 120;
};

/** Recomputed by hand from the readings. */
describe('gear centres bored back', () => {
  const name = 'gear-centres-bored-back.json';
  const sheet = workOut(name);
  const bars = mean(mean(20.001, 20.001), mean(19.999, 20));
  const near = mean(140.163, 140.161) - bars;
  const far = mean(140.118, 140.119) - bars;
  const found = mean(near, far);
  const read = mean(0.31, 0.34, 0.29, 0.33);
  const thinning = ((read - backlash(found, 0)) * 120) / found;

  it('centre distance over the bars, and what of the backlash is worn teeth', () => {
    expect(sheet.value('centre_found')).toBeCloseTo(found * MM, 10);
    expect(sheet.value('parallel_found')).toBeCloseTo((((near - far) * 30) / 180) * MM, 10);
    expect(sheet.value('worn_teeth')).toBeCloseTo(thinning * MM, 9);
  });

  it('bored to that distance the pair has the backlash wanted, to within the shop rule', () => {
    const centre = found - (read - 0.18) / (2 * Math.tan(ALPHA));
    expect(sheet.value('centre')).toBeCloseTo(centre * MM, 10);
    expect(sheet.value('mesh', 'backlash')).toBeCloseTo(backlash(centre, thinning) * MM, 9);
    expect(Math.abs(sheet.value('mesh', 'backlash') - 0.18 * MM)).toBeLessThan(3 * UM);
    expect(sheet.value('tip_clearance')).toBeCloseTo((0.75 + centre - 120) * MM, 9);
  });

  it('the worn bores clean up about the new axis: reading, twice the shift, the skin', () => {
    const shift = Math.hypot(near - sheet.value('centre') / MM, 0.04);
    expect(sheet.value('near', 'cleans_up_at')).toBeCloseTo((62.148 + 2 * shift + 0.1) * MM, 9);
  });

  it('teeth worn by another tenth bring the centres closer, and the tips nearer the roots', () => {
    const worn = workOut(name, { backlash_found: '0.41 | 0.44 | 0.39 | 0.43 mm' });
    const closer = (0.1 / (2 * Math.tan(ALPHA))) * MM;
    expect(sheet.value('centre') - worn.value('centre')).toBeCloseTo(closer, 9);
    expect(sheet.value('tip_clearance') - worn.value('tip_clearance')).toBeCloseTo(closer, 9);
    expect(workOut(name, { backlash_found: '0.70 | 0.70 mm' }).state('worn_teeth')).toBe('out of limits');
  });

  it('bored 0.1 mm wider at one end than at the other, the teeth bear at one end', () => {
    const skew = workOut(
      name,
      {},
      { near_bored: '140.001 mm ± 0.003 mm', far_bored: '139.901 mm ± 0.003 mm' },
    );
    expect(skew.value('parallel')).toBeCloseTo((0.1 * 30 * MM) / 180, 9);
    expect(skew.state('parallel')).toBe('out of limits');
    expect(skew.value('last', 'backlash')).toBeCloseTo(backlash(139.951 - bars, thinning) * MM, 9);
  });
});
