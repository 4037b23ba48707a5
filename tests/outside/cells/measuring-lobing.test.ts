import { describe, expect, test } from 'vitest';
import { measured, one, remarksOf, sheetOf, valueIn } from './sheet-of.ts';

/**
 * Second method, by coordinates: a lobed outline of mean radius 20 and amplitude `a` is turned in a V. Its height
 * above the apex is found by pushing it down until it touches both flanks; the indicator then reads its top.
 */
const readingInV = (lobes: number, vAngle: number, a: number): number => {
  const half = vAngle / 2;
  const tops: number[] = [];
  for (let turn = 0; turn < 720; turn++) {
    const turned = (turn / 720) * 2 * Math.PI;
    const radius = (at: number): number => 20 + a * Math.cos(lobes * (at - turned));
    // How far the outline reaches in a direction: it touches within a small angle of it.
    const reach = (direction: number): number => {
      let most = 0;
      for (let off = -0.005; off <= 0.005; off += 0.0001)
        most = Math.max(most, radius(direction + off) * Math.cos(off));
      return most;
    };
    const left = reach(-Math.PI + half);
    const right = reach(-half);
    // Centre at height h and side shift s: reach to a flank = h sin(half) -+ s cos(half).
    const height = (left + right) / 2 / Math.sin(half);
    const shift = (left - right) / 2 / Math.cos(half);
    // The indicator stands over the apex: the point of the outline at x = -shift from its centre.
    let at = Math.PI / 2;
    for (let i = 0; i < 5; i++) at = Math.acos(-shift / radius(at));
    tops.push(height + radius(at) * Math.sin(at));
  }
  return Math.max(...tops) - Math.min(...tops);
};

describe('factor of a V by turning a lobed outline in it (recomputed)', () => {
  test.each([
    [3, 60],
    [3, 90],
    [5, 90],
    [5, 108],
    [2, 90],
    [7, 108],
  ])('%i lobes, V of %i deg', (lobes, degrees) => {
    const a = 0.0002;
    const read = readingInV(lobes, (degrees * Math.PI) / 180, a);
    const it = one('lobing', { reading: `${read} mm`, lobes: String(lobes), v_angle: `${degrees} deg` });
    expect(Math.abs(it('out_of_roundness', 'mm') / (2 * a) - 1)).toBeLessThan(0.002);
  });
});

test('f = 1 + cos n(90 + t/2) / sin(t/2) (seen: J. Japan Soc. Precision Engineering 43 (514), 1977, p. 1167)', () => {
  for (const lobes of [2, 3, 4, 5, 7, 9])
    for (const t of [60, 72, 90, 108, 120]) {
      const radians = (t * Math.PI) / 180;
      const f = Math.abs(1 + Math.cos(lobes * (Math.PI / 2 + radians / 2)) / Math.sin(radians / 2));
      if (f < 0.1) {
        const remarks = remarksOf('lobing', {
          reading: '0.01 mm',
          lobes: String(lobes),
          v_angle: `${t} deg`,
        });
        expect(remarks.join(' ')).toContain('does not see');
      } else
        expect(
          one('lobing', { reading: '0.01 mm', lobes: String(lobes), v_angle: `${t} deg` })('factor', ''),
        ).toBeCloseTo(f, 9);
    }
});

test('what two points miss: an odd number of lobes fits larger than it measures (recomputed)', () => {
  const a = 0.002;
  // A V of 120 degrees sees all of these; one of 90 is blind to seven lobes.
  for (const lobes of [3, 5, 7]) {
    let widest = 0;
    let furthest = 0;
    for (let i = 0; i < 3600; i++) {
      const at = (i / 3600) * 2 * Math.PI;
      const r = (x: number) => 20 + a * Math.cos(lobes * x);
      widest = Math.max(widest, r(at) + r(at + Math.PI));
      furthest = Math.max(furthest, r(at));
    }
    const reading = `${readingFrom(lobes, a)} mm`;
    const it = one('lobing', { reading, lobes: String(lobes), v_angle: '120 deg' });
    expect(it('hidden', 'mm')).toBeCloseTo(2 * furthest - widest, 6);
    expect(it('two_point', 'mm')).toBeCloseTo(0, 9);
  }
});

/** Diameters between two points, of an outline of mean radius 20 and amplitude `a`, in so many directions of half a turn. */
const twoPoint = (lobes: number, a: number, directions: number): string => {
  const radius = (at: number): number => 20 + a * Math.cos(lobes * at);
  const read = Array.from({ length: directions }, (_, i) => {
    const at = (i / directions) * Math.PI;
    return (radius(at) + radius(at + Math.PI)).toFixed(4);
  });
  return `${read.join('; ')} mm`;
};

test.each([
  [2, 4, 60],
  [2, 4, 90],
  [4, 4, 60],
  [3, 6, 60],
  [3, 6, 90],
  [5, 6, 108],
])(
  '%i lobes in %i directions, and in a V of %i deg: each sees what its factor says',
  (lobes, directions, t) => {
    // Factors as above: two points 2 for an even number of lobes and 0 for an odd one, of out-of-roundness on the radius.
    const a = 0.01;
    const sheet = sheetOf({ size: measured('length', twoPoint(lobes, a, directions)) });
    const seen = valueIn('mm', sheet, 'size', 'out_of_round');
    expect(seen).toBeCloseTo(lobes % 2 === 0 ? 2 * (2 * a) : 0, 6);
    const radians = (t * Math.PI) / 180;
    const f = Math.abs(1 + Math.cos(lobes * (Math.PI / 2 + radians / 2)) / Math.sin(radians / 2));
    if (f < 0.1) return;
    const it = one('lobing', { reading: `${2 * a * f} mm`, lobes: String(lobes), v_angle: `${t} deg` });
    expect(it('out_of_roundness', 'mm')).toBeCloseTo(2 * a, 9);
    expect(it('two_point', 'mm')).toBeCloseTo(seen, 6);
  },
);

test('0.008 in between two points and 0.001 in in a V (Ask Dr. Math 66602, 2005) is what an oval shows, which a V of 60 deg does not see', () => {
  // Asked there, of one cylinder at 0 and 90 degrees: a micrometer shows the one, a three-point (V) micrometer the other. The page
  // names neither form nor angle.
  const sheet = sheetOf({ size: measured('length', '2.0000; 2.0080 in') }, { length: 'in' });
  expect(valueIn('in', sheet, 'size', 'out_of_round')).toBeCloseTo(0.008, 9);
  const remarks = remarksOf('lobing', { reading: '0.001 in', lobes: '2', v_angle: '60 deg' });
  expect(remarks.join(' ')).toContain('does not see');
  // Three lobes the other way round: a V of 60 degrees would show three times what is there, two points nothing.
  const it = one('lobing', { reading: '0.001 in', lobes: '3', v_angle: '60 deg' });
  expect(it('two_point', 'in')).toBeCloseTo(0, 9);
  expect(it('factor', '')).toBeCloseTo(3, 9);
});

const readingFrom = (lobes: number, a: number): number =>
  2 * a * Math.abs(1 + Math.cos(lobes * ((5 * Math.PI) / 6)) / Math.sin(Math.PI / 3));
