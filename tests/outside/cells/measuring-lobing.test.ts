import { describe, expect, test } from 'vitest';
import { one, remarksOf } from './sheet-of.ts';

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

const readingFrom = (lobes: number, a: number): number =>
  2 * a * Math.abs(1 + Math.cos(lobes * ((5 * Math.PI) / 6)) / Math.sin(Math.PI / 3));
