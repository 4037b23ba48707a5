import { describe, expect, it, test } from 'vitest';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { coverageFactor } from '../../../shared/statistics/coverage.ts';
import { rowById, titleOf } from '../tables/reference.ts';
import { cell, computed, drawn, readings, sheet, sheetFile } from './sheets.ts';

const near = (found: number | undefined, expected: number, within: number): void =>
  expect(Math.abs((found as number) - expected), `${found} for ${expected}`).toBeLessThanOrEqual(within);

const NM = 1e-9;
const numbers = (id: string) => rowById(id).expected as number;

describe('JCGM 100:2008, H.1: the end gauge as a sheet', () => {
  const file = sheetFile('end-gauge.json');
  const found = computed(file);
  const budget = found.budget('gauge_length');
  const share = (name: string): number =>
    (budget[file.cells.find((one) => one.name === name)?.id ?? '']?.u ?? 0) / NM;

  test(titleOf(rowById('R091')), () => near(found.figure('gauge_length').value / NM, numbers('R091'), 0.5));
  test(titleOf(rowById('R093')), () => near(share('standard_length'), numbers('R093'), 1e-6));
  test(titleOf(rowById('R094')), () => near(found.figure('difference').u / NM, numbers('R094'), 0.05));
  test(titleOf(rowById('R096')), () => {
    // Sensitivities of nothing: neither is a line of the budget, and the effects are none, not small ones.
    expect([share('expansion_standard'), share('bench_mean'), share('bench_cycle')]).toEqual([0, 0, 0]);
  });
  test(titleOf(rowById('R098')), () => near(share('temperature_gap'), numbers('R098'), 0.1));

  it('gives the combined standard uncertainty of Table H.1, 32 nm (from memory)', () =>
    near(found.figure('gauge_length').u / NM, 32, 0.5));

  it(titleOf(rowById('R099')), () => {
    // Readings in the number that gives each input the guide's degrees of freedom, and its standard uncertainty.
    const { inputs } = rowById('R099') as unknown as { inputs: Record<string, number> };
    const given = (name: string): number => inputs[name] as number;
    const list = (mean: number, u: number, dof: number, unit: string): Partial<CellRecord> => ({
      role: 'measured',
      entry: readings(mean, u * Math.sqrt(dof + 1), dof + 1, unit),
    });
    const instead: Record<string, Partial<CellRecord>> = {
      standard_length: list(50.000623, given('u_ls') * 1e-6, given('nu_ls'), 'mm'),
      difference_mean: list(0.215, given('s_d') * 1e-3, given('nu_d'), 'um'),
      comparator_random: list(0, given('u_d1') * 1e-3, given('nu_d1'), 'um'),
      comparator_systematic: list(0, given('u_d2') * 1e-3, given('nu_d2'), 'um'),
      expansion_difference: list(0, given('dalpha_half_width') / Math.sqrt(3), given('nu_dalpha'), '1/K'),
      temperature_gap: list(0, given('dtheta_half_width') / Math.sqrt(3), given('nu_dtheta'), 'K'),
    };
    const cells = file.cells.map((one) => ({ ...one, ...instead[one.name ?? ''] }));
    const figure = computed({ ...file, cells }).figure('gauge_length');
    near(figure.u / NM, 31.7, 0.1);
    near(figure.dof, numbers('R099'), 0.1);
    // H.1.6: U99 = 93 nm, of 32 nm as printed and t99(16) = 2.92 (from memory).
    near((coverageFactor(Math.floor(figure.dof), 0.99) * figure.u) / NM, 93, 1);
  });

  it(`${titleOf(rowById('R102'))}, by draws; first order alone gives 32 nm`, () => {
    const { deviation } = drawn(file, 'gauge_length', 200_000);
    near(deviation / NM, numbers('R102'), 0.3);
    const second = (rowById('R101').expected as { nm: [number, number] }).nm;
    const first = found.figure('gauge_length').u / NM;
    near(deviation / NM, Math.hypot(first, ...second), 0.3);
  });
});

test(`${titleOf(rowById('R101'))}, each product drawn`, () => {
  const { inputs, expected } = rowById('R101') as unknown as {
    inputs: Record<string, number>;
    expected: { nm: [number, number] };
  };
  const product = (expansion: number, temperature: string) =>
    drawn(
      sheet([
        cell('size', 'given', '50.000623 mm'),
        cell('expansion', 'given', `0 1/K ± ${expansion} 1/K`, { quantity: 'expansion coefficient' }),
        cell('temperature', 'measured', temperature, { quantity: 'temperature difference' }),
        cell('effect', 'worked', '= size * expansion * temperature'),
      ]),
      'effect',
      400_000,
    ).deviation / NM;
  // u(theta) of the guide, 0.41 K; the difference of temperatures by its half width.
  near(product(inputs.dalpha_half_width as number, '0 K ± 0.82 K'), expected.nm[0], 0.2);
  near(
    product(2e-6, `0 K ± ${(2 * (inputs.dtheta_half_width as number)) / Math.sqrt(3)} K`),
    expected.nm[1],
    0.05,
  );
});

describe('JCGM 101:2008, 9.2: the additive model', () => {
  const four = (entry: string, role: CellRecord['role'], last = entry) =>
    sheet([
      ...[entry, entry, entry, last].map((one, i) => cell(`x_${i}`, role, one)),
      cell('y', 'worked', '= x_0 + x_1 + x_2 + x_3'),
    ]);
  const MM = 1e-3;

  test(titleOf(rowById('R106')), () =>
    near(computed(four('0 mm ± 2 mm', 'measured')).figure('y').u / MM, numbers('R106'), 1e-9),
  );

  test(titleOf(rowById('R107')), () => {
    const { low, high } = drawn(four('0 mm ± 1.7320508 mm', 'given'), 'y', 1_000_000);
    const half = (high - low) / 2 / MM;
    // As printed, 3.88, and to the row's 0.005. One standard error of it is 0.0034 in a million draws: less cannot be asked.
    expect(half.toFixed(2)).toBe('3.88');
    near(half, numbers('R107'), 0.005);
  });

  test('9.2.2, normal inputs: 3.92, and the linear figure agrees (from memory)', () => {
    const { low, high, linear } = drawn(four('0 mm ± 2 mm', 'measured'), 'y', 1_000_000);
    near((high - low) / 2 / MM, 3.92, 0.015);
    expect(linear.verdict).toBe('agrees');
  });

  test('9.2.4, one rectangular input of ten times the rest: 17.0 where the linear figure has 19.9 (from memory)', () => {
    const { low, high, linear } = drawn(
      four('0 mm ± 1.7320508 mm', 'given', '0 mm ± 17.320508 mm'),
      'y',
      400_000,
    );
    near((high - low) / 2 / MM, 17, 0.1);
    near((linear.high - linear.low) / 2 / MM, 19.9, 0.05);
    near(linear.tolerance / MM, 0.5, 1e-9);
    expect(linear.verdict).toBe('misleads');
  });
});

/**
 * The comparison loss x1^2 + x2^2, both of standard uncertainty 0.005 and uncorrelated, in millionths: mean, standard
 * uncertainty and the shortest 95 % coverage interval. Over 0.005 squared it is a noncentral chi-square of two degrees of freedom:
 * computed by a general statistics library, scipy 1.17.1, `stats.ncx2(2, (x1 / 0.005)^2)`. The guide has by draws, from memory:
 * 50, 50, 0 to 150; 150, 112, 0 to 367; 2551, 502, 1590 to 3543. At x1 = 0 the linear figure has no spread at all.
 */
describe('JCGM 101:2008, 9.4: a sum of squares at and near its least', () => {
  const loss = (x: string) =>
    sheet([
      cell('x_1', 'measured', `${x} mm ± 0.010 mm`),
      cell('x_2', 'measured', '0 mm ± 0.010 mm'),
      cell('y', 'worked', '= x_1^2 + x_2^2', { quantity: 'area' }),
    ]);
  const MILLIONTH = 1e-12;

  test.each([
    ['0', 50, 50, 0, 149.787],
    ['0.010', 150, 111.803, 0, 366.005],
    ['0.050', 2550, 502.494, 1593.567, 3548.567],
  ])('x1 = %s', (x, mean, deviation, low, high) => {
    const found = drawn(loss(x), 'y', 400_000);
    near(found.mean / MILLIONTH, mean, 2);
    near(found.deviation / MILLIONTH, deviation, 2);
    near(found.low / MILLIONTH, low, 12);
    near(found.high / MILLIONTH, high, 12);
    if (x === '0') expect(computed(loss(x)).figure('y').u).toBeLessThan(1e-3 * deviation * MILLIONTH);
  });
});

describe('EA-4/02 S10: a vernier calliper at 150 mm', () => {
  const file = sheet([
    cell('indicated', 'given', '150.10 mm'),
    cell('block', 'given', '150 mm ± 0.8 um'),
    cell('expansion', 'given', '11.5e-6 1/K', { quantity: 'expansion coefficient' }),
    cell('temperature_gap', 'given', '0 K ± 2 K', { quantity: 'temperature difference' }),
    cell('resolution', 'given', '0 um ± 25 um'),
    cell('mechanical', 'given', '0 um ± 50 um'),
    cell(
      'fault',
      'worked',
      '= indicated - block + block * expansion * temperature_gap + resolution + mechanical',
    ),
  ]);
  const found = computed(file);
  const budget = found.budget('fault');

  test(titleOf(rowById('R109')), () => {
    const expected = rowById('R109').expected as number[];
    ['block', 'temperature_gap', 'resolution', 'mechanical'].forEach((name, i) => {
      near((budget[name]?.u ?? 0) * 1e6, expected[i] as number, 0.03 * (expected[i] as number));
    });
  });
  test(titleOf(rowById('R110')), () => near(found.figure('fault').u * 1e6, numbers('R110'), 1));
  test(titleOf(rowById('R112')), () => near(2 * found.figure('fault').u * 1e3, numbers('R112'), 0.005));
  test('its coverage factor is that of a trapezium, 1.83 (S10.9, from memory)', () => {
    const { low, high } = drawn(file, 'fault', 400_000);
    near((high - low) / 2 / found.figure('fault').u, 1.83, 0.02);
  });
});

describe('tolerance stacks', () => {
  const IN = 0.0254;
  const screw = computed(
    sheet(
      [
        cell('shoulder', 'given', '1.750 in ± 0.003 in'),
        cell('sleeve_b', 'given', '0.750 in ± 0.001 in'),
        cell('sleeve_c', 'given', '0.120 in ± 0.005 in'),
        cell('sleeve_d', 'given', '0.875 in ± 0.001 in'),
        cell('gap', 'worked', '= shoulder - sleeve_b - sleeve_c - sleeve_d'),
      ],
      { units: { length: 'in' } },
    ),
  ).figure('gap');
  // Limits are read as rectangular: the root sum of squares of half widths is sqrt 3 times the standard uncertainty.
  const rss = (u: number): number => u * Math.sqrt(3);

  test(titleOf(rowById('R644')), () => near(screw.value / IN, numbers('R644'), 1e-9));
  test(titleOf(rowById('R646')), () => near(screw.high / IN, numbers('R646'), 1e-9));
  test(titleOf(rowById('R647')), () => near(screw.low / IN, numbers('R647'), 1e-9));
  test(titleOf(rowById('R649')), () => near(rss(screw.u) / IN, numbers('R649'), 1e-8));

  const parts = Array.from({ length: 10 }, (_, i) => `part_${i}`);
  const ten = computed(
    sheet([
      ...parts.map((name) => cell(name, 'given', '10 mm ± 0.1 mm')),
      cell('stack', 'worked', `= ${parts.join(' + ')}`),
    ]),
  ).figure('stack');

  test(titleOf(rowById('R651')), () => {
    const expected = rowById('R651').expected as { worst_case: number; rss: number };
    near((ten.high - ten.value) * 1e3, expected.worst_case, 1e-6);
    near((ten.value - ten.low) * 1e3, expected.worst_case, 1e-6);
    near(rss(ten.u) * 1e3, expected.rss, 1e-6);
  });
  test(titleOf(rowById('R652')), () => near(1.5 * rss(ten.u) * 1e3, numbers('R652'), 1e-6));
});
