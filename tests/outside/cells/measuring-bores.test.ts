import { describe, expect, test } from 'vitest';
import { one, remarksOf } from './sheet-of.ts';

const round = Array.from({ length: 3600 }, (_, i) => (i / 3600) * 2 * Math.PI);

describe('circles off the true axis, stepped round by coordinates (recomputed)', () => {
  test('runout: greatest less least distance from the axis is twice the offset', () => {
    const e = 0.0762;
    const distances = round.map((at) => Math.hypot(25 * Math.cos(at) + e, 25 * Math.sin(at)));
    const runout = Math.max(...distances) - Math.min(...distances);
    const it = one('runout-offset', { runout: `${runout} mm` });
    expect(it('offset', 'mm')).toBeCloseTo(e, 9);
    // What must come off the diameter: the largest circle about the axis inside the surface.
    expect(it('to_turn_true', 'mm')).toBeCloseTo(50 - 2 * Math.min(...distances), 9);
  });

  test('bore clean-up: the circle about the true axis that covers the worn one, and its skin', () => {
    const [greatest, e, skin] = [57.4548, 0.1016, 0.1016];
    const furthest = Math.max(
      ...round.map((at) => Math.hypot((greatest / 2) * Math.cos(at) + e, (greatest / 2) * Math.sin(at))),
    );
    const it = one('bore-clean-up', {
      greatest: `${greatest} mm`,
      offset: `${e} mm`,
      skin: `${skin} mm`,
      new_size: '57.15 mm',
    });
    expect(it('cleans_up_at', 'mm')).toBeCloseTo(2 * furthest + skin, 9);
  });

  test('journal: the largest circle about the true axis inside the worn one, less the stock', () => {
    const [least, e, stock] = [59.86, 0.015, 0.02];
    const nearest = Math.min(
      ...round.map((at) => Math.hypot((least / 2) * Math.cos(at) + e, (least / 2) * Math.sin(at))),
    );
    const it = one('journal-undersize', {
      new_size: '60 mm',
      least: `${least} mm`,
      runout: `${2 * e} mm`,
      stock: `${stock} mm`,
      series: 'mm',
    });
    expect(it('cleans_up_at', 'mm')).toBeCloseTo(2 * nearest - stock, 9);
    // 0.25, 0.50, 0.75, 1.00 mm: seen in an engine maker's workshop manual.
    expect(it('undersize', 'mm')).toBeCloseTo(0.25, 9);
  });

  test('wall left: least and greatest distance between two circles', () => {
    const e = 1.5;
    const inside = round.map((at) => Math.hypot(25 * Math.cos(at) + e, 25 * Math.sin(at)));
    const it = one('wall-left', { outside: '90 mm', bore: '50 mm', offset: `${e} mm` });
    expect(it('thinnest', 'mm')).toBeCloseTo(45 - Math.max(...inside), 9);
    expect(it('thickest', 'mm')).toBeCloseTo(45 - Math.min(...inside), 9);
  });
});

test('line bore: two points in space, by vectors (recomputed)', () => {
  const near = [150 + 0.1, 0.05, 0] as const;
  const far = [150 + 0.2, 0.15, 300] as const;
  const along = [far[0] - near[0], far[1] - near[1], far[2] - near[2]] as const;
  const middle = [(near[0] + far[0]) / 2, (near[1] + far[1]) / 2] as const;
  const it = one('line-bore-shift', {
    centre_distance: '150 mm',
    span: '300 mm',
    toward_near: '-0.10 mm',
    toward_far: '-0.20 mm',
    across_near: '0.05 mm',
    across_far: '0.15 mm',
    face_width: '40 mm',
    pressure_angle: '20 deg',
  });
  expect(it('new_distance', 'mm')).toBeCloseTo(Math.hypot(...middle), 9);
  expect(it('out_of_line', 'mm')).toBeCloseTo((40 * Math.hypot(along[0], along[1])) / along[2], 9);
  expect(it('tilt_across', 'rad')).toBeCloseTo(Math.atan2(along[1], along[2]), 12);
  expect(it('backlash_change', 'mm')).toBeCloseTo(
    2 * (Math.hypot(...middle) - 150) * Math.tan(Math.PI / 9),
    9,
  );
});

test('lead chamfer: tan 15 deg = 2 - root 3 (recomputed)', () => {
  const it = one('lead-chamfer', {
    outside: '50.06 mm',
    bore: '50 mm',
    chamfer_length: '2 mm',
    entry_wanted: '0.1 mm',
  });
  const slope = 2 - Math.sqrt(3);
  expect(it('small_end', 'mm')).toBeCloseTo(50.06 - 4 * slope, 9);
  expect(it('entry', 'mm')).toBeCloseTo(50 - 50.06 + 4 * slope, 9);
  expect(it('least_length', 'mm')).toBeCloseTo(0.16 / 2 / slope, 9);
  expect(it('bearing_starts', 'mm')).toBeCloseTo(2 - 0.06 / 2 / slope, 9);
});

describe('what a shop is told', () => {
  const journal = { new_size: '60 mm', least: '59.86 mm', runout: '0.03 mm', stock: '0.02 mm', series: 'mm' };
  test('fillet and case depth are asked for', () => {
    const remarks = remarksOf('journal-undersize', journal).join(' ');
    expect(remarks).toContain('Radius at the shoulder not entered');
    expect(remarks).toContain('Depth of the hard case not entered');
  });
  test('a wheel sharper than the fillet, and grinding through the case, are said', () => {
    const remarks = remarksOf('journal-undersize', {
      ...journal,
      fillet: '3 mm',
      wheel_radius: '2 mm',
      case_depth: '0.1 mm',
    }).join(' ');
    expect(remarks).toContain('smaller radius than the shoulder had');
    expect(remarks).toContain('through the hard case');
    expect(remarks).not.toContain('not entered');
  });
  test('a journal past the last undersize has no undersize, and the remedy is named', () => {
    expect(() => one('journal-undersize', { ...journal, least: '57 mm' })('undersize', 'mm')).toThrow(
      /Build the journal up/,
    );
  });
  test('a bore that breaks out is said', () => {
    expect(remarksOf('wall-left', { outside: '52 mm', bore: '50 mm', offset: '1.5 mm' }).join(' ')).toContain(
      'breaks through',
    );
  });
});
