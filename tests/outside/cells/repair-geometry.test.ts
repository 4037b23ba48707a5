import { describe, expect, test } from 'vitest';
import { cell, one, remarksOf, sheetOf } from './sheet-of.ts';

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

describe('groove: the wall it leaves', () => {
  const sizes = { bore: '50 mm', groove_width: '20 mm', side_depth: '4 mm', outside: '70 mm' };
  test('is least at the corners of its floor (recomputed: the floor stepped across)', () => {
    const it = one('groove-in-bore', sizes);
    const floor = Math.sqrt(25 ** 2 - 10 ** 2) + 4;
    const walls = Array.from({ length: 2001 }, (_, i) => 35 - Math.hypot(floor, -10 + i / 100));
    expect(it('wall_left', 'mm')).toBeCloseTo(Math.min(...walls), 9);
    expect(35 - floor - it('wall_left', 'mm')).toBeGreaterThan(1.7);
  });
  test('where a corner comes out through it, that is said', () => {
    const thin = remarksOf('groove-in-bore', { ...sizes, outside: '57 mm' });
    expect(thin.join(' ')).toContain('comes out through the wall');
  });
  test('grooves and holes beside what it had (by hand: 2 x 20 + 3 x pi/4 x 16 of 100 mm2)', () => {
    const it = one('groove-in-bore', {
      bore: '1000 mm',
      groove_width: '4 mm',
      side_depth: '5.004 mm',
      grooves: '2',
      hole: '4 mm',
      holes: '3',
      original_area: '100 mm2',
    });
    expect(it('area_share', '')).toBeCloseTo(0.4 + (3 * Math.PI * 4) / 100, 3);
  });
});

test('a broach whose first pass cuts deeper than the groove is told of', () => {
  const broach = { bore: '1.6 in', broach_width: '0.1875 in', first_tooth: '0.3 in', last_tooth: '0.34 in' };
  const said = (depth: string) => remarksOf('broach-guide', { ...broach, crown_depth: depth }).join(' ');
  expect(said('0.030 in')).toContain('first pass alone cuts deeper');
  expect(said('0.040 in')).not.toContain('first pass alone');
});

test('a larger thread taken for a worn hole has its own drill and its own share of thread (recomputed by hand)', () => {
  const taken = (thread: string) =>
    one('thread-for-worn-hole', { hole: '8.1 mm', series: 'metric', drills_at_hand: 'metric', thread });
  expect(taken('M10')('drill', 'mm')).toBeCloseTo(8.5, 9);
  expect(taken('M12')('drill', 'mm')).toBeCloseTo(10.25, 9);
  expect(taken('M12')('thread_left', '')).toBeCloseTo((12 - 10.25) / (1.299038 * 1.75), 5);
  expect(
    remarksOf('thread-for-worn-hole', {
      hole: '9.2 mm',
      series: 'metric',
      drills_at_hand: 'metric',
      thread: 'M10',
    }).join(' '),
  ).toContain('less than its least share');
});

test('a screw past the tap meets the drilled hole; inside the lead no less than it (recomputed by coordinates)', () => {
  const tap = { thread: 'M10', hole: '8.5 mm', tip: '7 mm', lead_turns: '4', tapped_depth: '20 mm' };
  const end = (depth: string) => one('tap-lead', { ...tap, screw_in: depth })('end_to_turn', 'mm');
  // From 14 mm the cone falls from 10 to 7 mm over 6 mm: 9 mm at 16 mm deep, 8.5 mm from 17 mm on.
  expect(end('16 mm')).toBeCloseTo(9, 9);
  expect(end('19 mm')).toBeCloseTo(8.5, 9);
  expect(end('22 mm')).toBeCloseTo(8.5, 9);
});

test('the floor of a socket holds what the drilled shank does (recomputed: both forces at the same strength)', () => {
  const it = one('drilled-screw', { thread: 'M10', bored: '4 mm' });
  const root = it('root', 'mm');
  const tears = (Math.PI / 4) * (root ** 2 - 16);
  const least = tears / (Math.PI * root * 0.577);
  const judged = (floor: number) =>
    sheetOf({
      it: cell('drilled-screw', {
        thread: 'M10',
        bored: '4 mm',
        head_height: '10 mm',
        socket_depth: `${10 - floor} mm`,
      }),
    }).byName('it')?.outputs.socket_floor?.check.asNew.state;
  expect(judged(least + 0.02)).toMatch(/^holds/);
  expect(judged(least - 0.02)).toBe('misses');
});

test('drills of each kind nearest to the hole (recomputed: along the printed rows of B94.11M and ISO 235)', () => {
  // M10 at 77 %: 8.4997 mm; 21/64 8.334, 11/32 8.731; Q 8.433, R 8.611; 8.5 mm.
  const it = one('tap-drill', { thread: 'M10', share: '77 %', class: '6H' });
  expect(it('fraction_drill', 'in')).toBeCloseTo(21 / 64, 9);
  expect(it('number_drill', 'in')).toBeCloseTo(0.332, 9);
  expect(it('metric_drill', 'mm')).toBeCloseTo(8.5, 9);
  expect(it('number_leaves', '')).toBeCloseTo((10 - 0.332 * 25.4) / (1.299038 * 1.5), 4);
  // ISO 965-1: minor diameter of M10-6H 8.376 to 8.676 mm, so 21/64 lies 42 um under the least.
  expect(it('fraction_over_class', 'um')).toBeCloseTo(8334.375 - 8376, 0);
  expect(it('metric_over_class', 'um')).toBe(0);
});
