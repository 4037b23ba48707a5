import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { judge, type Margin } from '../../shared/checks/check.ts';
import type { DecisionRule } from '../../shared/sheet/format.ts';
import { normalTail } from '../../shared/statistics/normal.ts';
import rows from './reference/values.json' with { type: 'json' };

/** Ships without types. */
const jstat: { normal: { cdf(x: number, mean: number, deviation: number): number } } = createRequire(
  import.meta.url,
)('jstat');

const row = (id: string) => {
  const found = rows.find((r) => r.id === id);
  if (!found) throw new Error(`no reference row ${id}`);
  return found as unknown as { inputs: Record<string, number>; expected: unknown };
};

/** Margins of a normal figure `y` with standard uncertainty `u`, worst case at two of them. */
const margin = (value: number, u: number): Margin => ({
  value,
  low: value - 2 * u,
  high: value + 2 * u,
  centre: value,
  u,
});

describe('running clearance of a small engine’s aluminium main bush, thousandths of an inch (common practice, no source)', () => {
  const measured = (y: number, expanded: number, rule: DecisionRule = 'iso14253-2013') =>
    judge({
      mode: 'part',
      rule,
      lower: margin(y - 5, expanded / 2),
      upper: margin(8.5 - y, expanded / 2),
      wear: { ...margin(15 - y, expanded / 2), side: 'high' },
      metalOn: 'low',
    });

  test.each([
    [7, 0.1, 'proven in limits', 'proven in limits', 'proven in limits as new; proven serviceable'],
    [
      8,
      0.3,
      'proven in limits, near the edge',
      'proven in limits',
      'proven in limits as new, near the edge at the upper limit; proven serviceable',
    ],
    [
      8,
      0.6,
      'not proven',
      'proven in limits',
      'not proven as new at the upper limit, metal gone; proven serviceable',
    ],
    [
      12,
      0.3,
      'out of limits',
      'proven in limits',
      'out of limits as new at the upper limit, metal gone; proven serviceable',
    ],
    [
      16,
      0.3,
      'out of limits',
      'out of limits',
      'out of limits as new at the upper limit, metal gone; not serviceable at the wear limit, metal gone',
    ],
    [
      4,
      0.3,
      'out of limits',
      'out of limits',
      'out of limits as new; not serviceable at the lower limit, metal on',
    ],
  ])('measured %d with U = %d: %s as new, %s in service', (y, U, asNew, inService, words) => {
    const found = measured(y, U);
    expect(found.asNew.state).toBe(asNew);
    expect(found.inService?.state).toBe(inService);
    expect(found.words).toBe(words);
  });

  test('a clearance below the new minimum is out below, not worn', () => {
    expect(measured(4, 0.3)).toMatchObject({
      asNew: { at: 'lower', side: 'metal on', by: 1 },
      inService: { at: 'lower' },
    });
    expect(measured(16, 0.3)).toMatchObject({
      asNew: { at: 'upper', by: 7.5 },
      inService: { at: 'wear', by: 1 },
    });
  });
});

describe('R630: acceptance zone of ISO 14253-1:2013 for a 50 H7 hole', () => {
  const { inputs, expected } = row('R630') as unknown as {
    inputs: { LSL: number; USL: number; U: number };
    expected: { accept: [number, number]; reject_below: number; reject_above: number };
  };
  const state = (y: number) =>
    judge({
      mode: 'part',
      rule: 'iso14253-2013',
      lower: margin(y - inputs.LSL, inputs.U / 2),
      upper: margin(inputs.USL - y, inputs.U / 2),
      scale: y,
    }).asNew.state;
  const hair = 1e-6;

  test('proves in from limit to limit of the zone, its ends included', () => {
    for (const y of [
      expected.accept[0],
      expected.accept[0] + hair,
      expected.accept[1] - hair,
      expected.accept[1],
    ])
      expect(state(y)).toMatch(/^proven in/);
    for (const y of [expected.accept[0] - hair, expected.accept[1] + hair])
      expect(state(y)).toBe('not proven');
  });

  test('proves out beyond both ends of the reject zone', () => {
    expect(state(expected.reject_below - hair)).toBe('out of limits');
    expect(state(expected.reject_above + hair)).toBe('out of limits');
    expect(state(expected.reject_below + hair)).toBe('not proven');
    expect(state(expected.reject_above - hair)).toBe('not proven');
  });
});

describe('conformance probability', () => {
  test.each(['R632', 'R633', 'R635'])('%s, JCGM 106:2012 eq. (7), between two limits', (id) => {
    const { inputs, expected } = row(id);
    const { y, u, LSL, USL } = inputs as { y: number; u: number; LSL: number; USL: number };
    expect(1 - normalTail((y - LSL) / u) - normalTail((USL - y) / u)).toBeCloseTo(expected as number, 5);
    const found = judge({
      mode: 'part',
      rule: 'iso14253-2017',
      lower: margin(y - LSL, u),
      upper: margin(USL - y, u),
    });
    expect(/^proven in/.test(found.asNew.state)).toBe((expected as number) >= 0.95);
  });

  test('R637, R638: the examples of JCGM 106:2012 7.3.2, from memory', () => {
    const zener = row('R637');
    expect(1 - normalTail((zener.inputs.TU! - zener.inputs.y!) / zener.inputs.u!)).toBeCloseTo(
      zener.expected as number,
      2,
    );
    const box = row('R638');
    expect(1 - normalTail((box.inputs.y! - box.inputs.TL!) / box.inputs.u!)).toBeCloseTo(
      box.expected as number,
      2,
    );
  });

  test.each(['R640', 'R641'])(
    '%s: guard band and probability at the acceptance limit, ILAC-G8:09/2019',
    (id) => {
      const { inputs, expected } = row(id);
      expect(1 - normalTail(inputs.w_over_u!)).toBeCloseTo(expected as number, 4);
    },
  );

  test('R641: one limit is proven in limits from 1.645 u on, and out of limits beyond as much', () => {
    const state = (centre: number) =>
      judge({ mode: 'part', rule: 'iso14253-2017', upper: margin(centre, 1) }).asNew.state;
    expect(state(1.6449)).toBe('proven in limits, near the edge');
    expect(state(1.6448)).toBe('not proven');
    expect(state(-1.6448)).toBe('not proven');
    expect(state(-1.6449)).toBe('out of limits');
  });

  test('R643: a capability index of 3.125 leaves room inside both guard bands', () => {
    const { inputs, expected } = row('R643');
    expect(inputs.T! / (4 * inputs.u!)).toBeCloseTo(expected as number, 12);
    const middle = judge({
      mode: 'part',
      rule: 'iso14253-2013',
      lower: margin(inputs.T! / 2, inputs.u!),
      upper: margin(inputs.T! / 2, inputs.u!),
    });
    expect(middle.asNew.state).toBe('proven in limits');
  });

  test('the normal distribution agrees with a statistics library', () => {
    for (let x = -8; x <= 8; x += 0.125) {
      const theirs = jstat.normal.cdf(-x, 0, 1);
      expect(Math.abs(normalTail(x) - theirs)).toBeLessThan(1e-7);
    }
    // Abramowitz and Stegun, table 26.2 (from memory): Q(3) = 0.0013498980, Q(5) = 2.866515719e-7
    expect(normalTail(3)).toBeCloseTo(0.001349898, 9);
    expect(normalTail(5) / 2.866515719e-7).toBeCloseTo(1, 9);
  });
});
