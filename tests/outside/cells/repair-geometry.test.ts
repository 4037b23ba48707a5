import { describe, expect, test } from 'vitest';
import { one, remarksOf } from './sheet-of.ts';

/** Recomputed: the same figures by another way, bisection, integration, or plain counting. */
const bisect = (low: number, high: number, f: (x: number) => number): number => {
  let [a, b] = [low, high];
  for (let i = 0; i < 200; i++) {
    const middle = (a + b) / 2;
    if (f(a) * f(middle) <= 0) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
};
const integral = (from: number, to: number, f: (x: number) => number, steps = 200_000): number => {
  const step = (to - from) / steps;
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += f(from + (i + 0.5) * step);
  return sum * step;
};

describe('relief by a keyseat cutter in a bore', () => {
  const [R, r, depth] = [1.1, 0.75, 0.08];
  const it = one('relief-in-bore', {
    bore: '2.20 in',
    cutter: '1.5 in',
    depth: '0.080 in',
    to_bridge: '0.70 in',
  });
  test('the edge lies on both circles (recomputed: bisection along the bore)', () => {
    const angle = bisect(
      0.01,
      1.5,
      (a) => Math.hypot(R * Math.cos(a) - (R + depth - r), R * Math.sin(a)) - r,
    );
    expect(it('chord', 'in')).toBeCloseTo(2 * R * Math.sin(angle), 9);
    expect(it('angle_spanned', 'rad')).toBeCloseTo(2 * angle, 9);
    // By hand: 1.045 in; sunk as deep into a flat face it would be 0.674 in long.
    expect(it('chord', 'in')).toBeCloseTo(1.045, 3);
    expect(it('flat_chord', 'in')).toBeCloseTo(0.674, 3);
  });
  test('depth that bridges: the relief of that depth has that chord (recomputed: the cell with it)', () => {
    const again = one('relief-in-bore', {
      bore: '2.20 in',
      cutter: '1.5 in',
      depth: `${it('depth_to_bridge', 'in')} in`,
    });
    expect(again('chord', 'in')).toBeCloseTo(0.7, 8);
    expect(it('depth_to_bridge', 'in')).toBeCloseTo(0.0295, 4);
    // In a flat face 0.087 in would be needed, three times as deep.
    expect(r - Math.sqrt(r ** 2 - 0.35 ** 2)).toBeCloseTo(0.087, 3);
  });
  test('section (recomputed: integration across)', () => {
    const e = R + depth - r;
    const over = (y: number): number =>
      Math.max(0, e + Math.sqrt(Math.max(0, r * r - y * y)) - Math.sqrt(Math.max(0, R * R - y * y)));
    expect(it('relief_area', 'in2')).toBeCloseTo(integral(-r, r, over), 6);
  });
  test('a cutter that does not go in, and a neck that rubs, are said', () => {
    const room = { bore: '2.20 in', depth: '0.080 in' };
    expect(() => one('relief-in-bore', { ...room, cutter: '2.20 in' })('chord', 'in')).toThrow(
      /does not go in/,
    );
    expect(remarksOf('relief-in-bore', { ...room, cutter: '1.5 in', neck: '1.4 in' }).join(' ')).toContain(
      'neck rubs',
    );
  });
});

describe('oil hole', () => {
  test('where it comes out (recomputed: a ray followed to the cylinder)', () => {
    const [Ro, Ri, side, lean] = [30, 25, 12, (35 * Math.PI) / 180];
    const it = one('oil-hole', {
      outside: '60 mm',
      bore: '50 mm',
      drill: '4 mm',
      offset: '12 mm',
      lean: '35 deg',
    });
    // From (side, y, 0) inward at the lean: y falls by cos, z grows by sin, until x^2 + y^2 = Ri^2.
    const start = Math.sqrt(Ro * Ro - side * side);
    const gone = bisect(0, start, (t) => Math.hypot(side, start - t * Math.cos(lean)) - Ri);
    expect(it('length_drilled', 'mm')).toBeCloseTo(gone, 9);
    expect(it('shift_along', 'mm')).toBeCloseTo(gone * Math.sin(lean), 9);
    const angle = (y: number): number => Math.atan2(side, y);
    expect(it('turn', 'rad')).toBeCloseTo(angle(start - gone * Math.cos(lean)) - angle(start), 9);
  });
  test('neighbours draw together: 30 degrees apart, 4 mm, at the bore and half way (recomputed: coordinates)', () => {
    const wall = (depth: string) =>
      one('oil-hole', { outside: '60 mm', bore: '50 mm', drill: '4 mm', apart: '30 deg', depth })(
        'wall_between',
        'mm',
      );
    const straight = (radius: number) =>
      Math.hypot(radius - radius * Math.cos(Math.PI / 6), radius * Math.sin(Math.PI / 6)) - 4;
    expect(wall('')).toBeCloseTo(straight(25), 9);
    expect(wall('2.5 mm')).toBeCloseTo(straight(27.5), 9);
    expect(wall('0 mm')).toBeCloseTo(straight(30), 9);
  });
});

test('groove: section by integration over its width (recomputed)', () => {
  const it = one('groove-in-bore', { bore: '50 mm', groove_width: '6 mm', side_depth: '2 mm' });
  const floor = Math.sqrt(25 ** 2 - 3 ** 2) + 2;
  expect(it('section', 'mm2')).toBeCloseTo(
    integral(-3, 3, (x) => floor - Math.sqrt(625 - x * x)),
    6,
  );
  expect(it('over_floor', 'mm')).toBeCloseTo(25 + floor, 9);
});

describe('thread that cleans up a worn hole', () => {
  const repair = (hole: string, more: Record<string, string> = {}) =>
    one('thread-for-worn-hole', { hole, skin: '0 mm', series: 'UNC', drills_at_hand: 'fraction', ...more });
  test.each([
    ['0.260 in', 0.3125, 17 / 64],
    ['0.300 in', 0.375, 5 / 16],
    ['0.330 in', 0.4375, 3 / 8],
    ['0.430 in', 0.5, 7 / 16],
  ])(
    'UNC, hole of %s (recomputed: along the printed UNC table and the fractions by hand)',
    (hole, major, drill) => {
      const it = repair(hole);
      expect(it('major', 'in')).toBeCloseTo(major, 9);
      expect(it('drill', 'in')).toBeCloseTo(drill, 9);
      expect(it('thread_left', '')).toBeGreaterThanOrEqual(0.55);
      expect(it('thread_left', '')).toBeLessThanOrEqual(0.77);
    },
  );
  test('a hole no thread cleans up says so', () => {
    expect(() => repair('5.5 in')('major', 'in')).toThrow(/plug it/);
  });
});

test('a screw drilled through: 77 % of its area is 93 % in torsion (recomputed: moments by integration)', () => {
  const it = one('drilled-screw', { thread: '3/8-16 UNC', bored: '0.1507 in' });
  const root = it('root', 'in') / 2;
  const polar = (from: number): number => integral(from, root, (x) => 2 * Math.PI * x ** 3);
  expect(it('torsion_share', '')).toBeCloseTo(polar(0.1507 / 2) / polar(0), 6);
  expect(it('tension_share', '')).toBeCloseTo(0.77, 2);
  expect(it('torsion_share', '')).toBeCloseTo(0.93, 2);
});
