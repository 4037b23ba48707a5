import { describe, expect, it } from 'vitest';
import { inch, inches, ofKind, plain, SQRT3, thou } from './closed-form.ts';

/** Worst case and standard uncertainty against figures worked by hand from JCGM 100:2008, 4.3.7 and 5.1.2. */

const near = (got: number, want: number, within = 1e-9) =>
  expect(Math.abs(got - want), `${got} against ${want}`).toBeLessThanOrEqual(
    Math.max(1e-14, within * Math.abs(want)),
  );

describe('what a tolerance does to a result', () => {
  it('stands once on a size: that of the entry counts, and the other one is told of', () => {
    const sheet = inches([plain('a', 'chosen', '2 in ± .001', { tolerance: '+.002 -0' })]);
    near(sheet.figure('a').low, 1.999 * inch);
    near(sheet.figure('a').high, 2.001 * inch);
    expect(sheet.byName('a')?.remarks).toEqual([
      { grade: 'caution', message: expect.stringMatching(/^Two tolerances are given.*\+\.002 -0 beside it/) },
    ]);
  });

  it('a reading in fractions is off a rule, to a sixty-fourth or finer: common practice, no source', () => {
    const half = (entry: string) => {
      const { low, high } = inches([plain('a', 'measured', entry)]).figure('a');
      return (high - low) / 2;
    };
    near(half('2 1/4 in'), inch / 128);
    near(half('2 3/128 in'), inch / 256);
    near(half('5 ft 3 1/2 in'), inch / 128);
    near(half('1 1/2 thou'), thou / 4);
  });

  it('an unequal one moves the middle of the statistical figure, not the value', () => {
    const { figure } = inches([
      plain('a', 'given', '2 in +.003 -.001'),
      plain('b', 'given', '1 in ± .002 in'),
      plain('gap', 'worked', '=a - b'),
    ]);
    const gap = figure('gap');
    near(gap.value, 1 * inch);
    near(gap.low, 0.997 * inch);
    near(gap.high, 1.005 * inch);
    near(gap.centre, 1.001 * inch);
    near(gap.u, (Math.hypot(0.002, 0.002) / SQRT3) * inch);
  });

  it('a share is of the value it stands behind, a formula too, and of its size where it is below zero', () => {
    const force = { quantity: 'force' };
    const { figure } = inches([
      plain('f', 'given', '100 N ± 5 %', force),
      plain('held', 'chosen', '=f * 2', { ...force, tolerance: '± 10 %' }),
      plain('worked', 'worked', '=f * 2 ± 10 %', force),
      plain('pull', 'given', '-100 N ± 5 %', force),
      plain('back', 'worked', '=-f ± 5 %', force),
      plain('friction', 'chosen', '0.12', { quantity: 'number', tolerance: '± 10 %' }),
      plain('share', 'chosen', '12 %', { quantity: 'number', tolerance: '± 1 %' }),
    ]);
    const ends = (name: string, low: number, high: number) => {
      near(figure(name).low, low);
      near(figure(name).high, high);
    };
    ends('f', 95, 105);
    ends('held', 180, 220);
    ends('worked', 2 * 95 - 20, 2 * 105 + 20);
    ends('pull', -105, -95);
    ends('back', -110, -90);
    ends('friction', 0.108, 0.132);
    ends('share', 0.11, 0.13);
  });

  it('a class of ISO 286 is taken at the size a formula gives', () => {
    // ISO 286-2:2010: 50 H7 +25 0, 50 g6 -9 -25, 50 k6 +18 +2, 90 h6 0 -22 micrometres
    const { figure } = inches([
      plain('d', 'given', '50 mm ± 0.5 mm'),
      plain('hole', 'chosen', '=d', { tolerance: 'H7' }),
      plain('pin', 'chosen', '50 mm g6'),
      plain('tight', 'chosen', '50 mm k6'),
      plain('big', 'chosen', '=d + 40 mm', { tolerance: 'h6' }),
      plain('clearance', 'worked', '=hole - pin'),
      plain('transition', 'worked', '=hole - tight'),
    ]);
    near(figure('hole').low, 0.05);
    near(figure('hole').high, 0.050025);
    near(figure('big').low, 0.089978);
    near(figure('clearance').low, 9e-6, 1e-6);
    near(figure('clearance').high, 50e-6, 1e-6);
    near(figure('transition').low, -18e-6, 1e-6);
    near(figure('transition').high, 23e-6, 1e-6);
  });

  it('a source that two results share drops out of their difference, and turns where a result turns', () => {
    const area = { quantity: 'area' };
    const { figure } = inches([
      plain('a', 'given', '2 in ± .01 in'),
      plain('nothing', 'worked', '=a - a'),
      plain('zero', 'given', '0 in ± .01 in'),
      plain('square', 'worked', '=zero * zero', area),
      plain('x', 'given', '1 in ± .1 in'),
      plain('y', 'given', '1 in ± .1 in'),
      plain('saddle', 'worked', '=(x - 1 in) * (y - 1 in)', area),
      plain('most', 'worked', '=MAX(x; y + 0.05 in)'),
    ]);
    near(figure('nothing').high, 0);
    near(figure('nothing').u, 0);
    near(figure('square').low, 0);
    near(figure('square').high, 1e-4 * inch ** 2);
    near(figure('saddle').low, -0.01 * inch ** 2);
    near(figure('saddle').high, 0.01 * inch ** 2);
    near(figure('most').low, 0.95 * inch);
    near(figure('most').high, 1.15 * inch);
  });
});

describe('what a reading is worth', () => {
  it.each([
    ['2.2515 in', 0.1 * thou, 'length'],
    ['.0015', 0.1 * thou, 'length'],
    ['0.0000 in', 0.1 * thou, 'length'],
    ['0.000 mm', 1e-6, 'length'],
    ['1.5e-3 in', 0.1 * thou, 'length'],
    ['5 ft 3 in', inch, 'length'],
    ["30 deg 15'", Math.PI / 180 / 60, 'angle'],
    ['68.0 degF', 0.1 / 1.8, 'temperature'],
    ['2 1/4 in', inch / 64, 'length'],
  ])('%s without gauge or ±: half a step of its last figure, evenly spread', (entry, step, quantity) => {
    near(inches([plain('a', 'measured', entry, { quantity })]).figure('a').u, step / 2 / SQRT3, 1e-6);
  });

  const gauge = (name: string, more: Record<string, string> = {}) =>
    ofKind('gauge', name, {
      gauge: 'micrometer-25-50-mm',
      certificate: '2 um',
      division: '1 um',
      scatter: '1 um',
      setting_doubt: '0 um',
      ...more,
    });
  /** One reading: scatter and half a division. */
  const own = 1e-6 * Math.sqrt(1 + 1 / 12);

  it('two readings with one gauge lose its error in their difference, and one set in the other too', () => {
    const { figure } = inches([
      gauge('mic'),
      gauge('bore_gauge', { set_in: 'mic', certificate: '3 um', setting_doubt: '0.5 um' }),
      plain('a', 'measured', '38.050 mm', { gauge: 'mic' }),
      plain('b', 'measured', '38.000 mm', { gauge: 'mic' }),
      plain('bore', 'measured', '38.100 mm', { gauge: 'bore_gauge' }),
      plain('step', 'worked', '=a - b'),
      plain('clearance', 'worked', '=bore - a'),
    ]);
    near(figure('a').u, Math.hypot(1e-6, own));
    near(figure('step').u, Math.SQRT2 * own);
    near(figure('clearance').u, Math.sqrt(1.5e-6 ** 2 + 0.5e-6 ** 2 / 3 + 2 * own ** 2));
  });

  it('a warm reading is brought back with part and gauge, the gauge too where the doubt is written behind it', () => {
    const at = { gauge: 'mic', at: '30 degC ± 1 K', material: 'body' };
    const { figure } = inches([
      ofKind('material', 'body', { material: '6061-t6' }),
      gauge('mic', { gauge_temperature: '24 degC ± 1 K', gauge_expansion: '11.5e-6 1/K ± 1e-6 1/K' }),
      plain('a', 'measured', '40.000 mm', at),
      plain('b', 'measured', '40.000 mm ± 2 um', at),
    ]);
    const alpha = figure('body', 'alpha');
    const factor = 1 - alpha.value * 10 + 11.5e-6 * 4;
    near(figure('a').value, 0.04 * factor, 1e-12);
    near(figure('b').value, 0.04 * factor, 1e-12);
    // JCGM 100:2008, H.1.3: each coefficient by its temperature, each temperature by its coefficient.
    const parts = (reading: number) => [
      reading,
      0.04 * 10 * alpha.u,
      0.04 * alpha.value * 0.5,
      (0.04 * 4 * 1e-6) / SQRT3,
      0.04 * 11.5e-6 * 0.5,
    ];
    near(figure('a').u, Math.hypot(1e-6, ...parts(own)), 3e-4);
    near(figure('b').u, Math.hypot(...parts(1e-6)), 3e-4);
  });
});

describe('a spread that is not known', () => {
  const limits = { lower: '1 in', upper: '3 in' };
  it.each([
    ['a tolerance that cannot be read', plain('a', 'chosen', '2 in', { tolerance: 'snug', limits })],
    ['a tolerance that has one side', plain('a', 'chosen', '=1 in * 2', { tolerance: '+.002', limits })],
    ['a class that is not there', plain('a', 'chosen', '=1 in * 2', { tolerance: 'H99', limits })],
    ['a gauge that is not there', plain('a', 'measured', '2.0000 in', { gauge: 'mike', limits })],
    ['a warm part of no material', plain('a', 'measured', '2.0000 in', { at: '40 degC', limits })],
  ])('%s proves nothing, here or below', (_, cell) => {
    const sheet = inches([cell, plain('below', 'worked', '=a * 1', { limits })]);
    near(sheet.figure('a').value, 2 * inch);
    expect(sheet.output('a').check.words).toBe('entry in error');
    expect(sheet.output('below').check.words).toBe('waiting');
    const said = [...(sheet.byName('a')?.problems ?? []), sheet.output('a').problem];
    expect(said.some((one) => one !== undefined)).toBe(true);
    expect(sheet.output('below').problem?.originId).toBe('c_a');
  });
});
