import { describe, expect, it, test } from 'vitest';
import type { DecisionRule } from '../../../shared/sheet/format.ts';
import { rowById, titleOf } from '../tables/reference.ts';
import { cell, computed, drawn, sheet } from './sheets.ts';

const limits = { lower: '50 mm', upper: '50.025 mm', metalOn: 'low' as const };

/** The state of a hole 50 H7 that was read, under a rule. */
const stateOf = (entry: string, rule: DecisionRule) =>
  computed(sheet([cell('hole', 'measured', entry, { limits })], { rule })).result('hole').outputs.value?.check
    .asNew;

describe(`through the engine, ${titleOf(rowById('R630'))}`, () => {
  const { accept, reject_below, reject_above } = rowById('R630').expected as {
    accept: [number, number];
    reject_below: number;
    reject_above: number;
  };
  const at = (y: number) => stateOf(`${y.toFixed(4)} mm ± 0.004 mm`, 'iso14253-2013');

  test('a reading inside the zone proves the hole in, one beyond it does not', () => {
    for (const y of [accept[0] + 1e-4, 50.0125, accept[1] - 1e-4]) expect(at(y)?.state).toMatch(/^proven in/);
    for (const y of [accept[0] - 1e-4, accept[1] + 1e-4]) expect(at(y)?.state).toBe('not proven');
  });

  test('past the other guard band it is out of limits, with the side', () => {
    expect(at(reject_below - 1e-4)).toMatchObject({ state: 'out of limits', side: 'metal on', at: 'lower' });
    expect(at(reject_above + 1e-4)).toMatchObject({
      state: 'out of limits',
      side: 'metal gone',
      at: 'upper',
    });
    for (const y of [reject_below + 1e-4, reject_above - 1e-4]) expect(at(y)?.state).toBe('not proven');
  });

  test('simple acceptance goes by the bare reading', () => {
    expect(stateOf('50.0001 mm ± 0.004 mm', 'simple')?.state).toMatch(/^proven in/);
    expect(stateOf('49.9999 mm ± 0.004 mm', 'simple')?.state).toBe('out of limits');
  });
});

test(titleOf(rowById('R643')), () => {
  const { T, u } = rowById('R643').inputs as { T: number; u: number };
  const hole = computed(
    sheet([
      cell('hole', 'measured', `50.0125 mm ± ${2 * u} mm`, { limits }),
      cell('room', 'worked', `= ${T} mm / (4 * ${u} mm)`, { quantity: 'number' }),
    ]),
  );
  // Of the limits and the uncertainty that the engine judges by.
  expect((50.025 - 50) / (4 * hole.figure('hole').u * 1000)).toBeCloseTo(
    rowById('R643').expected as number,
    9,
  );
  expect(hole.figure('room').value).toBeCloseTo(rowById('R643').expected as number, 12);
});

describe('conformance by draws', () => {
  const DRAWS = 400_000;
  /** Four standard errors of a share. */
  const chance = (p: number): number => 4 * Math.sqrt((p * (1 - p)) / DRAWS) + 1e-5;

  test.each(['R632', 'R633', 'R635'])('%s: JCGM 106:2012 eq. (7), between two limits', (id) => {
    const { inputs, expected } = rowById(id) as unknown as {
      inputs: { y: number; u: number; LSL: number; USL: number };
      expected: number;
    };
    const entry = `${inputs.y} mm ± ${2 * inputs.u} mm`;
    const { conformance } = drawn(sheet([cell('hole', 'measured', entry, { limits })]), 'hole', DRAWS);
    expect(Math.abs((conformance?.within as number) - expected)).toBeLessThan(chance(expected));
    expect(
      (conformance?.within ?? 0) + (conformance?.belowLower ?? 0) + (conformance?.aboveUpper ?? 0),
    ).toBeCloseTo(1, 10);
  });

  test('R637, R638: one limit (JCGM 106:2012 7.3.2, from memory)', () => {
    const zener = rowById('R637');
    const voltage = cell('voltage', 'measured', '-5.47 ± 0.10', {
      quantity: 'number',
      limits: { upper: '-5.40' },
    });
    const within = drawn(sheet([voltage]), 'voltage', DRAWS).conformance?.within as number;
    expect(Math.abs(within - (zener.expected as number))).toBeLessThan(0.005);
    const box = rowById('R638');
    const strength = cell('strength', 'measured', '509.7 kPa ± 17.2 kPa', {
      quantity: 'pressure',
      limits: { lower: '490 kPa' },
    });
    const held = drawn(sheet([strength]), 'strength', DRAWS).conformance;
    expect(Math.abs((held?.within as number) - (box.expected as number))).toBeLessThan(0.005);
    expect(held?.aboveUpper).toBeUndefined();
  });

  test.each(['R640', 'R641'])('%s: at the acceptance limit of a guarded limit', (id) => {
    const { inputs, expected } = rowById(id) as unknown as { inputs: { w_over_u: number }; expected: number };
    const entry = `${50.025 - inputs.w_over_u * 0.002} mm ± 0.004 mm`;
    const file = sheet([cell('hole', 'measured', entry, { limits: { upper: '50.025 mm' } })]);
    const within = drawn(file, 'hole', DRAWS).conformance?.within as number;
    expect(Math.abs(within - expected)).toBeLessThan(chance(expected));
  });
});

describe('what two readings share', () => {
  const gauge = (name: string, more: Record<string, string>) => ({
    id: name,
    role: 'cell' as const,
    kind: 'gauge',
    edition: 1,
    name,
    inputs: {
      gauge: 'micrometer-25-50-mm',
      division: '1 um',
      scatter: '0.5 um',
      setting_doubt: '0 um',
      ...more,
    },
  });
  const joint = (setIn: string | undefined) =>
    computed(
      sheet([
        gauge('micrometer', { certificate: '3 um' }),
        gauge('ring_gauge', {
          certificate: '2 um',
          setting_doubt: '1 um',
          ...(setIn ? { set_in: setIn } : {}),
        }),
        cell('journal', 'measured', '49.950 mm', { gauge: 'micrometer' }),
        cell('bore', 'measured', '50.010 mm', { gauge: 'ring_gauge' }),
        cell('clearance', 'worked', '= bore - journal'),
      ]),
    );
  // JCGM 100, 5.2: certificate U / 2, setting a / sqrt 3, each reading sqrt(s^2 + d^2 / 12), in micrometres.
  const reading = Math.hypot(0.5, 1 / Math.sqrt(12));
  const own = [2 / 2, 1 / Math.sqrt(3), reading, reading];

  it('drops out of their difference: a bore gauge set in the micrometer that read the journal', () => {
    const found = joint('micrometer');
    expect(found.figure('clearance').u * 1e6).toBeCloseTo(Math.hypot(...own), 9);
    expect(found.budget('clearance').micrometer).toBeUndefined();
  });

  it('and only there: it stays in the bore, and in a clearance whose gauges have nothing in common', () => {
    expect(joint('micrometer').figure('bore').u * 1e6).toBeCloseTo(
      Math.hypot(2 / 2, 1 / Math.sqrt(3), reading, 3 / 2),
      9,
    );
    const apart = joint(undefined);
    expect(apart.figure('clearance').u * 1e6).toBeCloseTo(Math.hypot(...own, 3 / 2), 9);
    expect(apart.budget('clearance').micrometer?.u).toBeCloseTo(1.5e-6, 12);
  });

  it('draws say the same', () => {
    const file = sheet([
      gauge('micrometer', { certificate: '3 um' }),
      gauge('ring_gauge', { certificate: '2 um', setting_doubt: '1 um', set_in: 'micrometer' }),
      cell('journal', 'measured', '49.950 mm', { gauge: 'micrometer' }),
      cell('bore', 'measured', '50.010 mm', { gauge: 'ring_gauge' }),
      cell('clearance', 'worked', '= bore - journal'),
    ]);
    const { deviation } = drawn(file, 'clearance', 200_000);
    expect(Math.abs(deviation * 1e6 - Math.hypot(...own))).toBeLessThan(0.01);
  });
});
