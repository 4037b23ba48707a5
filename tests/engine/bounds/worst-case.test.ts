import { describe, expect, it } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import { computeSheet } from '../../../src/engine/compute.ts';

/** Cells by name: a leading `=` makes one worked out. */
const sheet = (entries: Record<string, string>, limits: CellRecord['limits'] = {}): SheetFile => {
  const names = Object.keys(entries);
  return {
    format: 'fitwright-sheet',
    version: 1,
    title: { title: 'worst case' },
    units: { length: 'mm' },
    rule: 'worst-case',
    cells: names.map((name, i): CellRecord => {
      const entry = entries[name] as string;
      return {
        id: `c${i}`,
        name,
        role: entry.startsWith('=') ? 'worked' : 'given',
        entry,
        ...(/^[\d.]+ ± [\d.]+$/.test(entry) ? { quantity: 'number' } : {}),
        ...(i === names.length - 1 ? { limits } : {}),
      };
    }),
  };
};

const lastOf = (entries: Record<string, string>, limits?: CellRecord['limits']) => {
  const name = Object.keys(entries).at(-1) as string;
  const found = computeSheet(sheet(entries, limits), library).byName(name)?.outputs.value;
  if (!found?.planned) throw new Error(JSON.stringify(found));
  return { ...found.planned, state: found.check.asNew.state };
};

const FIT = { b1: '50 mm H7', b2: '50 mm H7', h1: '50 mm h6', h2: '50 mm h6' };

describe('a worst case with kinks, turns and steps', () => {
  it.each([
    [
      'the least of two bores over the greatest of two shafts',
      { ...FIT, x: '= MIN(b1; b2) - MAX(h1; h2)' },
      0,
      0.000041,
    ],
    [
      'one of two equal sizes',
      { a: '2 in +0.001 -0 in', b: '2 in +0.001 -0 in', x: '= MIN(a; b)' },
      0.0508,
      0.0508254,
    ],
    ['a size about zero', { a: '0.5 mm ± 2 mm', x: '= ABS(a)' }, 0, 0.0025],
    ['a turn inside', { a: '0.5 ± 0.1', x: '= a * (1 - a)' }, 0.24, 0.25],
    ['a turn inside, written otherwise', { a: '0.5 ± 0.1', x: '= a - a^2' }, 0.24, 0.25],
    [
      'a product of differences',
      {
        d1: '50 mm ± 0.1 mm',
        d2: '50 mm ± 0.1 mm',
        b1: '50 mm ± 0.1 mm',
        b2: '50 mm ± 0.1 mm',
        x: '= (d1 - d2) * (b1 - b2) / 100 mm',
      },
      -0.0000004,
      0.0000004,
    ],
    [
      'a branch near its nominal',
      { a: '10 mm ± 0.1 mm', x: '= IF(ABS(a - 10.05 mm) < 0.02 mm; 5 mm; 1 mm)' },
      0.001,
      0.005,
    ],
    ['what is left after whole divisions', { a: '10 mm ± 0.3 mm', x: '= MOD(a; 0.5 mm)' }, 0, 0.0005],
    [
      'a distance near coincidence',
      { x1: '0 mm ± 0.1 mm', y1: '0 mm ± 0.1 mm', x: '= SQRT(x1^2 + y1^2)' },
      0,
      0.0001 * Math.SQRT2,
    ],
    ['whole steps', { a: '2.5 ± 1', x: '= INT(a)' }, 1, 3],
    ['a middle value', { a: '1 ± 1', b: '2 ± 1', c: '3 ± 1', x: '= MEDIAN(a; b; c)' }, 1, 3],
    ['what is shared drops out', { a: '50 mm ± 1 mm', b: '= 2 * a', x: '= b - a - a + 3 mm' }, 0.003, 0.003],
    [
      'a branch that keeps the root whole',
      { a: '1 mm ± 1 mm', b: '1 mm ± 1 mm', x: '= IF(a > b; SQRT((a - b) / 1 mm) * 1 mm; 0 mm)' },
      0,
      0.001 * Math.SQRT2,
    ],
  ] as const)('%s', (_, entries, low, high) => {
    const found = lastOf(entries);
    const reach = 2e-6 * Math.max(high - low, 1e-9);
    expect(found.low).toBeLessThanOrEqual(low + 1e-15);
    expect(found.high).toBeGreaterThanOrEqual(high - 1e-15);
    expect(found.low).toBeGreaterThan(low - reach);
    expect(found.high).toBeLessThan(high + reach);
    expect(found.atMost).toBeUndefined();
  });

  // In closed form: a sum of twelve sizes of ± 1 mm reaches 12 mm either way.
  it.each([
    ['how far apart two long sums are', '= ABS(SUMS - 60 mm)', 0, 0.012],
    ['the greater of two with nothing in common', '= MAX(ODD; EVEN) - MIN(b1; b2)', -0.007, 0.007],
  ])('with many sources: %s', (_, formula, low, high) => {
    const names = Array.from({ length: 12 }, (_, i) => `a${i}`);
    const half = (odd: number): string => `(${names.filter((_, i) => i % 2 === odd).join(' + ')} - 30 mm)`;
    const x = formula
      .replace('SUMS', `(${names.join(' + ')})`)
      .replace('ODD', half(1))
      .replace('EVEN', half(0));
    const pair = { b1: '0 mm ± 1 mm', b2: '0 mm ± 1 mm' };
    const found = lastOf({ ...pair, ...Object.fromEntries(names.map((name) => [name, '5 mm ± 1 mm'])), x });
    expect(found.low).toBeCloseTo(low, 12);
    expect(found.high).toBeCloseTo(high, 12);
    expect(found.atMost).toBeUndefined();
  });

  it('does not hold where the truth reaches over the limit', () => {
    const x = '= MIN(b1; b2) - MAX(h1; h2)';
    expect(lastOf({ ...FIT, x }, { upper: '0.020 mm' }).state).toBe('may miss');
    expect(lastOf({ ...FIT, x }, { lower: '-0.001 mm', upper: '0.050 mm' }).state).toContain('holds');
  });
});

describe('a value without bound', () => {
  it('is open on both sides where a divisor passes through zero', () => {
    expect(lastOf({ c: '0.5 ± 1', x: '= 1 / c' })).toMatchObject({ low: -Infinity, high: Infinity });
    expect(lastOf({ a: '80 deg ± 20 deg', x: '= TAN(a)' })).toMatchObject({ low: -Infinity, high: Infinity });
  });
  it('is judged on each side by itself', () => {
    const torques = { t1: '10 N.m ± 1 N.m', t2: '1 N.m ± 1 N.m' };
    const above = lastOf({ ...torques, x: '= t1 / t2' }, { lower: '4' });
    expect(above.low).toBeCloseTo(4.5, 12);
    expect(above.high).toBe(Infinity);
    expect(above.state).toContain('holds');
    expect(lastOf({ ...torques, x: '= t1 / t2' }, { upper: '20' }).state).toBe('may miss');
  });
  it('is open where there is no value within the spread', () => {
    expect(lastOf({ c: '0.5 ± 1', x: '= SQRT(c)' })).toMatchObject({ low: -Infinity, high: Infinity });
  });
  it.each([
    ['= MAX(1; SQRT(c))'],
    ['= IF(SQRT(c) <> 7; 2; 2)'],
    ['= IF(OR(c < 9; SQRT(c) > 1); 1; 2)'],
    ['= SIN(SQRT(c) * 1 rad)'],
    ['= ABS(ASIN(c)) / 1 rad'],
  ])('is open there too where %s would hide it', (x) => {
    const found = lastOf({ c: '0.5 ± 1', x }, { lower: '-9' });
    expect(found).toMatchObject({ low: -Infinity, high: Infinity });
    expect(found.state).not.toContain('holds');
  });
  it('is not open where only the way it was written says so', () => {
    const found = lastOf({ a: '1 ± 0.9', x: '= 1 / (a * a - a + 1)' });
    expect(found.high).toBeCloseTo(4 / 3, 6);
    expect(found.low).toBeCloseTo(1 / (1.9 * 1.9 - 0.9), 6);
  });
  // a and b lie between 2 and 4. Where a is the lesser it is at least 2 against 1, else b at least 2 against 1.9.
  it('is told where value and limit jump at once, though many sources move both', () => {
    const parts = Array.from({ length: 12 }, (_, i) => [`s${i}`, '0.5 ± 0.1666666666666666']);
    const sum = (from: number): string => Array.from({ length: 6 }, (_, i) => `s${from + i}`).join(' + ');
    const found = lastOf(
      { ...Object.fromEntries(parts), a: `= ${sum(0)}`, b: `= ${sum(6)}`, x: '= MIN(a; b)' },
      { lower: '= IF(a < b; 1; 1.9)' },
    );
    expect(found.low).toBeCloseTo(2, 9);
    expect(found.state).toContain('holds');
  });
  it('is open where the end of a size is a place without a value', () => {
    const many = Object.fromEntries(Array.from({ length: 8 }, (_, i) => [`s${i}`, '1 ± 0.5']));
    const x = `= LN(c) * s0 - s1 * s2 + s3 / s4 - (s5 - s6) * s7`;
    expect(lastOf({ ...many, c: '1 ± 1', x })).toMatchObject({ low: -Infinity, high: Infinity });
  });
});
