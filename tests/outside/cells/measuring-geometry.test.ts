import { describe, expect, test } from 'vitest';
import { one, remarksOf } from './sheet-of.ts';

describe("sine bar: H = L sin(angle), Machinery's Handbook", () => {
  test.each([
    ['R685', '5 in', '12.5 deg', 1.082198],
    ['R686', '10 in', "3 deg 20'", 0.581448],
  ])('%s %s bar at %s (computed)', (_, roller_distance, angle, height) => {
    expect(Math.abs(one('sine-bar', { roller_distance, angle })('height', 'in') - height)).toBeLessThan(1e-6);
  });
  test('blocks in hand give the angle back', () => {
    const bar = one('sine-bar', { roller_distance: '5 in', angle: '12 deg', blocks: '1.082198 in' });
    expect(bar('angle_set', 'deg')).toBeCloseTo(12.5, 4);
    expect(bar('angle_error', 'deg')).toBeCloseTo(0.5, 4);
  });
});

describe('taper from two diameters', () => {
  const it = one('taper-two-diameters', {
    large: '1.25 in',
    small: '1.00 in',
    apart: '6 in',
    between_centres: '10 in',
  });
  test('R688 taper per foot and angles (computed)', () => {
    expect(Math.abs(it('taper', 'in/ft') - 0.5)).toBeLessThan(1e-5);
    expect(Math.abs(it('included_angle', 'deg') - 2.38698)).toBeLessThan(1e-5);
    expect(Math.abs(it('centreline_angle', 'deg') - 1.19349)).toBeLessThan(1e-5);
  });
  test('R694 tailstock setover (computed)', () => {
    expect(Math.abs(it('setover', 'in') - 0.208333)).toBeLessThan(1e-5);
  });
  // Diameters of the standard plugs to three places, from memory: the taper per foot follows to about 1e-4.
  test.each([
    ['R689', 1, '0.475 in', '0.369 in', '2 1/8 in', 0.59858],
    ['R691', 3, '0.938 in', '0.778 in', '3 3/16 in', 0.60235],
    ['R693', 5, '1.748 in', '1.475 in', '5 3/16 in', 0.63151],
  ])('%s Morse taper no. %i, ANSI/ASME B5.10 (from memory)', (_, _no, large, small, apart, taper) => {
    const found = one('taper-two-diameters', { large, small, apart });
    expect(Math.abs(found('taper', 'in/ft') - taper)).toBeLessThan(1e-4);
  });
  test('a large end smaller than the small end is refused', () => {
    const remarks = remarksOf('taper-two-diameters', { large: '1 in', small: '2 in', apart: '6 in' });
    expect(remarks.join(' ')).toContain('change them over');
  });
});

describe('bolt circle', () => {
  const xy = [
    [0.0, 50.0],
    [-47.5528, 15.4508],
    [-29.3893, -40.4508],
    [29.3893, -40.4508],
    [47.5528, 15.4508],
  ] as const;
  test('R696 five holes on 100 mm, the first at 90 deg (computed)', () => {
    xy.forEach(([x, y], i) => {
      const at = one('bolt-circle', {
        circle: '100 mm',
        holes: '5',
        hole: String(i + 1),
        first_angle: '90 deg',
      });
      expect(Math.abs(at('x', 'mm') - x)).toBeLessThan(5e-5);
      expect(Math.abs(at('y', 'mm') - y)).toBeLessThan(5e-5);
    });
  });
  test.each([
    ['100 mm', '5', 'mm', 58.77853],
    ['4 in', '6', 'in', 2.0],
    ['6 in', '8', 'in', 2.2961],
  ])('R697 chord on %s with %s holes (computed)', (circle, holes, unit, chord) => {
    expect(Math.abs(one('bolt-circle', { circle, holes, hole: '1' })('chord', unit) - chord)).toBeLessThan(
      1e-4,
    );
  });
});

describe('internal taper by two balls', () => {
  const it = one('taper-by-balls', {
    large_ball: '12 mm',
    small_ball: '8 mm',
    large_depth: '15 mm',
    small_depth: '25 mm',
  });
  test('included angle 28.95 deg (seen: metrology question with worked answer, 7 August 2015)', () => {
    expect(it('included_angle', 'deg')).toBeCloseTo(28.95, 1);
  });
  test('both balls touch the cone it gives (recomputed: distance of a point from a line)', () => {
    const half = it('half_angle', 'rad');
    const mouth = it('mouth', 'mm') / 2;
    // Cone in section: radius = mouth - z tan(half). Distance of (0, z) from it is (mouth - z tan) cos.
    const distance = (z: number) => (mouth - z * Math.tan(half)) * Math.cos(half);
    expect(distance(15 + 6)).toBeCloseTo(6, 9);
    expect(distance(25 + 4)).toBeCloseTo(4, 9);
  });
});

test('external taper by pins: cone of 20 mm, 1 in 10, drawn by coordinates (recomputed)', () => {
  const [pin, low, high] = [6, 12, 60];
  const taper = 0.1;
  const lean = Math.atan(taper / 2);
  const over = (blocks: number): number => {
    const z = blocks + pin / 2;
    // Centre of the pin: its distance from the flank, square to it, is its radius.
    const flank = 10 + (z * taper) / 2;
    return 2 * (flank + pin / 2 / Math.cos(lean) + pin / 2);
  };
  const it = one('taper-by-pins', {
    over_low: `${over(low)} mm`,
    over_high: `${over(high)} mm`,
    low_blocks: `${low} mm`,
    high_blocks: `${high} mm`,
    pin: `${pin} mm`,
  });
  expect(it('taper', 'mm/m')).toBeCloseTo(100, 6);
  expect(it('small_end', 'mm')).toBeCloseTo(20, 6);
});
