import { describe, expect, test } from 'vitest';
import { woodruffNumbers } from '../../../cells/tables/keys.ts';
import { cell, measured, one, remarksOf, sheetOf, valueIn } from './sheet-of.ts';

/** Recomputed by another way: summing, series, stepping along coordinates. */
const integral = (from: number, to: number, f: (x: number) => number, steps = 100_000): number => {
  const step = (to - from) / steps;
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += f(from + (i + 0.5) * step);
  return sum * step;
};

describe('Woodruff key', () => {
  test('its side in the hub and its section at the crown (recomputed: strips of the disc)', () => {
    for (const key of [...woodruffNumbers].filter((_, i) => i % 5 === 0)) {
      const it = one('woodruff-key', { shaft: '2 in', key });
      const [disc, height, seat] = [it('disc', 'in'), it('height', 'in'), it('seat_depth', 'in')];
      const across = (y: number): number => 2 * Math.sqrt((disc / 2) ** 2 - (disc / 2 - y) ** 2);
      expect(it('proud', 'in2'), key).toBeCloseTo(integral(seat, height, across), 7);
      expect(it('sheared', 'in2'), key).toBeCloseTo(across(seat) * it('width', 'in'), 9);
    }
  });
  test('a key wider than its shaft is refused', () => {
    expect(() => one('woodruff-key', { shaft: '0.1 in', key: '404' })('sink', 'in')).toThrow(
      /wider than the shaft/,
    );
  });
});

describe('oil through a clearance and grooves', () => {
  const sheet = { diameter: '50 mm', length: '40 mm', pressure: '2 bar', viscosity: '30 mPa.s' };
  test.each([0, 0.3, 0.7, 1])('off centre by %s (recomputed: summed round the ring)', (e) => {
    const it = one('oil-flow', { ...sheet, clearance: '0.1 mm', off_centre: String(e) });
    const round = integral(
      0,
      2 * Math.PI,
      (a) => (0.025 * (0.00005 * (1 + e * Math.cos(a))) ** 3 * 2e5) / (12 * 0.03 * 0.04),
    );
    expect(it('through_clearance', 'L/s') / 1000 / round).toBeCloseTo(1, 6);
  });
  test.each([
    [2, 2],
    [6, 2],
    [1, 4],
  ])('groove of %s by %s mm (recomputed: the whole series of the duct)', (width, depth) => {
    const it = one('oil-flow', {
      ...sheet,
      clearance: '0.1 mm',
      grooves: '3',
      groove_width: `${width} mm`,
      groove_depth: `${depth} mm`,
    });
    const [w, h] = [Math.max(width, depth) / 1000, Math.min(width, depth) / 1000];
    let series = 0;
    for (let n = 1; n < 400; n += 2) series += Math.tanh((n * Math.PI * w) / (2 * h)) / n ** 5;
    const whole =
      ((3 * w * h ** 3 * 2e5) / (12 * 0.03 * 0.04)) * (1 - ((192 / Math.PI ** 5) * h * series) / w);
    expect(Math.abs(it('through_grooves', 'L/s') / 1000 / whole - 1)).toBeLessThan(0.007);
  });
  test('without a groove the clearance alone counts; fast flow is said to be none of its kind', () => {
    const it = one('oil-flow', { ...sheet, clearance: '0.1 mm' });
    expect(it('flow', 'L/s')).toBe(it('through_clearance', 'L/s'));
    expect(
      remarksOf('oil-flow', { ...sheet, viscosity: '1 mPa.s', clearance: '0.6 mm' }).join(' '),
    ).toContain('not laminar');
  });
});

describe('groove of a snap ring', () => {
  test('side of the groove (recomputed: rings summed), and a groove on the wrong side', () => {
    const it = one('snap-ring-groove', { fits: 'shaft-50' });
    expect(it('side', 'mm2')).toBeCloseTo(
      integral(23.5, 25, (r) => 2 * Math.PI * r),
      6,
    );
    expect(() => one('snap-ring-groove', { fits: 'shaft-50', groove_cut: '53 mm' })('side', 'mm2')).toThrow(
      /smaller than the shaft/,
    );
  });
});

describe('taper pin', () => {
  test('reamed until it sinks to the middle: the hole is as large as the pin there (recomputed: along coordinates)', () => {
    const it = one('taper-pin', {
      large: '10 mm',
      length: '60 mm',
      taper: '= 1 / 50',
      hub: '50 mm',
      shaft: '30 mm',
      stands_out: '15 mm',
    });
    const pinAt = (x: number): number => 10 - x / 50;
    // Seated, its large end stands out by 5 mm: the mouth of the hole meets the pin 5 mm from there.
    expect(it('hole_large', 'mm')).toBeCloseTo(pinAt(5), 9);
    expect(it('hole_small', 'mm')).toBeCloseTo(pinAt(55), 9);
    // As tried it stands out 15 mm: the mouth is as large as the pin is there.
    expect(it('still_to_ream', 'mm')).toBeCloseTo(pinAt(5) - pinAt(15), 9);
    expect(it('sheared', 'mm2')).toBeCloseTo((Math.PI / 4) * (pinAt(15) ** 2 + pinAt(45) ** 2), 9);
  });
});

describe('wire thread insert', () => {
  // Metric inserts (from memory): least minor, pitch, major of the tapped hole, mm.
  test.each([
    ['M6', 6.217, 6.65, 7.299],
    ['M10', 10.324, 10.974, 11.949],
    ['M12', 12.379, 13.137, 14.273],
  ])('%s against the table (from memory)', (thread, minor, pitch, major) => {
    const it = one('thread-insert', { thread });
    expect(Math.abs(it('least_hole', 'mm') - minor)).toBeLessThan(1e-3);
    expect(Math.abs(it('pitch_diameter', 'mm') - pitch)).toBeLessThan(1e-3);
    expect(Math.abs(it('major', 'mm') - major)).toBeLessThan(1e-3);
  });
  test('an old hole wider than the new thread is refused', () => {
    expect(() => one('thread-insert', { thread: 'M8', hole_found: '9.7 mm' })('share_left', '')).toThrow(
      /wider than the thread of the insert/,
    );
  });
});

describe('clocking by an arc', () => {
  test.each([0, 0.5, 2, 5.9])(
    'hole of 6 mm, centres %s mm apart (recomputed: strips of both circles)',
    (apart) => {
      const it = one('arc-clocking', {
        outside: '80 mm',
        arc: `= 80 mm * ASIN(${apart} / 80)`,
        hole: '6 mm',
      });
      const open = integral(apart / 2 - 3, 3 - apart / 2, (x) => {
        const half = (from: number): number => Math.sqrt(Math.max(0, 9 - (x - from) ** 2));
        return 2 * Math.min(half(-apart / 2), half(apart / 2));
      });
      expect(it('open_share', '')).toBeCloseTo(open / (9 * Math.PI), 5);
      expect(it('chord', 'mm')).toBeCloseTo(apart, 9);
    },
  );
  test('a full turn of one-degree arcs goes round (recomputed)', () => {
    expect(360 * one('arc-clocking', { outside: '3 in', arc: '1 in' })('per_degree', 'in')).toBeCloseTo(
      3 * Math.PI,
      9,
    );
  });
});

test('an original: what is meant to differ is named, the rest agrees or does not', () => {
  const it = (more: Record<string, string>) =>
    one('from-original', { original: '25.000 mm ± 0.004 mm', new: '25.010 mm', within: '0.02 mm', ...more });
  expect(it({})('unexplained', 'mm')).toBeCloseTo(0.01, 9);
  expect(it({ meant: '0.01 mm' })('unexplained', 'mm')).toBeCloseTo(0, 9);
});

describe('an original and a part made after it, both read with gauges', () => {
  const gauge = (certificate: string) =>
    cell('gauge', {
      gauge: 'micrometer-25-50-mm',
      certificate,
      setting_doubt: '1 um',
      division: '1 um',
      scatter: '0.5 um',
    });
  const beside = (size: string, more: Record<string, string> = {}, was = '30.000 mm') =>
    sheetOf({
      ours: gauge('2 um'),
      theirs: gauge('4 um'),
      was: measured('length', was, { gauge: 'theirs' }),
      is: measured('length', size, { gauge: 'ours' }),
      it: cell('from-original', { original: '= was', new: '= is', ...more }),
    });
  // Twice the root of scatter and a division by its spread; the certificate; the setting, either way alike likely.
  const known = (certificate: number) =>
    Math.hypot(2 * Math.hypot(0.5, 1 / Math.sqrt(12)), certificate, 2 / Math.sqrt(3));
  const both = Math.hypot(known(2), known(4));
  const stateOf = (sheet: ReturnType<typeof beside>) =>
    sheet.byName('it')?.outputs.unexplained?.check.asNew.state;

  test('agree within what both were read to (recomputed: root of the squares, JCGM 100, 5.1.2)', () => {
    expect(valueIn('um', beside('30.004 mm'), 'it', 'agreed')).toBeCloseTo(both, 6);
    expect(stateOf(beside(`${30 + (both - 0.1) / 1000} mm`))).toMatch(/^holds/);
    expect(stateOf(beside(`${30 + (both + 0.1) / 1000} mm`))).toBe('misses');
  });
  test('a list that scatters widens it (recomputed: no less than its scatter by Student)', () => {
    const list = valueIn('um', beside('30.004 mm', {}, '29.99; 30.00; 30.01 mm'), 'it', 'agreed');
    expect(list).toBeGreaterThan(both);
  });
  test('what a drawing allows goes before it, and then the doubt of both counts', () => {
    const drawing = beside('30.004 mm', { within: '8 um' });
    expect(valueIn('um', drawing, 'it', 'agreed')).toBeCloseTo(8, 9);
    expect(stateOf(drawing)).toBe('not proven');
    expect(stateOf(beside('30.001 mm', { within: '20 um' }))).toMatch(/^proven/);
  });
  test('nothing read on either side asks for it', () => {
    const bare = sheetOf({
      was: { role: 'given', quantity: 'length', entry: '30 mm' },
      it: cell('from-original', { original: '= was', new: '30 mm' }),
    });
    expect(bare.byName('it')?.outputs.unexplained?.problem?.message).toContain('enter what a drawing allows');
  });
});
