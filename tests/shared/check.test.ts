import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judge, type Margin } from '../../shared/checks/check.ts';
import type { DecisionRule } from '../../shared/sheet/format.ts';

const RULES: readonly DecisionRule[] = ['worst-case', 'iso14253-2013', 'iso14253-2017', 'simple'];
const margin = (value: number, half: number, u = half / 2): Margin => ({
  value,
  low: value - half,
  high: value + half,
  centre: value,
  u,
});
const plan = (lower: Margin | undefined, upper?: Margin, rule: DecisionRule = 'worst-case') =>
  judge({ mode: 'plan', rule, lower, upper });

describe('a planned value', () => {
  test('holds while its whole spread lies inside, the limit included', () => {
    expect(plan(margin(3, 1), margin(3, 1)).asNew).toEqual({ state: 'holds', by: -3 });
  });

  test('is near the edge nearer to a limit than a quarter of the band, with one limit nearer than half the spread’s width', () => {
    expect(plan(margin(1, 1), margin(3, 1)).asNew.state).toBe('holds');
    expect(plan(margin(0.99, 0.9), margin(3.01, 0.9)).asNew).toEqual({
      state: 'holds, near the edge',
      at: 'lower',
      by: -0.99,
    });
    // In the middle of its band, however wide its spread.
    expect(plan(margin(2, 1.99), margin(2, 1.99)).asNew.state).toBe('holds');
    expect(plan(margin(1.9, 1)).asNew.state).toBe('holds, near the edge');
    expect(plan(margin(2, 1)).asNew.state).toBe('holds');
  });

  test('may miss while its spread straddles a limit, and misses when all of it lies outside', () => {
    expect(plan(margin(0.5, 1), margin(9, 1)).asNew).toEqual({ state: 'may miss', at: 'lower', by: -0.5 });
    expect(plan(margin(-1.5, 1), margin(9, 1)).asNew).toEqual({ state: 'misses', at: 'lower', by: 1.5 });
  });

  test('says on which side metal is left only when that is known', () => {
    const miss = (metalOn?: 'low' | 'high') =>
      judge({
        mode: 'plan',
        rule: 'worst-case',
        lower: margin(-2, 1),
        upper: margin(9, 1),
        ...(metalOn ? { metalOn } : {}),
      });
    expect(miss('low')).toMatchObject({
      asNew: { side: 'metal on' },
      words: 'misses at the lower limit, metal on',
    });
    expect(miss('high').asNew.side).toBe('metal gone');
    expect(miss().asNew).not.toHaveProperty('side');
  });
});

describe('limits', () => {
  test('without any there is nothing to compare with', () => {
    expect(judge({ mode: 'part', rule: 'simple' })).toEqual({
      asNew: { state: 'no limits' },
      rule: 'simple',
      words: 'no limits',
    });
  });

  test('a missing input makes the check wait, also without limits computed yet', () => {
    expect(judge({ mode: 'plan', rule: 'simple', waiting: true }).asNew.state).toBe('waiting');
    expect(plan(margin(Number.NaN, 1)).words).toBe('waiting');
  });

  test('a wear limit alone gives a verdict in service alone', () => {
    const found = judge({ mode: 'part', rule: 'worst-case', wear: { ...margin(5, 1), side: 'low' } });
    expect(found.asNew.state).toBe('no limits');
    expect(found.words).toBe('proven serviceable');
  });

  test('a part just made is judged as new only', () => {
    const worn = {
      mode: 'part',
      rule: 'worst-case',
      upper: margin(-2, 1),
      wear: { ...margin(5, 1), side: 'high' },
    } as const;
    expect(judge(worn).words).toBe('out of limits as new at the upper limit; proven serviceable');
    expect(judge({ ...worn, justMade: true })).not.toHaveProperty('inService');
  });

  test('a shaft wears down: in service its upper limit stays', () => {
    const shaft = {
      mode: 'plan',
      rule: 'worst-case',
      lower: margin(-2, 1),
      upper: margin(9, 1),
      metalOn: 'high',
    } as const;
    expect(judge({ ...shaft, wear: { ...margin(3, 1), side: 'low' } }).words).toBe(
      'misses as new at the lower limit, metal gone; holds in service',
    );
    const thick = judge({
      ...shaft,
      lower: margin(12, 1),
      upper: margin(-3, 1),
      wear: { ...margin(15, 1), side: 'low' },
    });
    expect(thick.inService).toMatchObject({ state: 'misses', at: 'upper', side: 'metal on' });
  });
});

describe('what cannot be computed', () => {
  test('in one case only leaves the check not proven, with a note, unless another limit is missed anyway', () => {
    const unsure = { ...margin(3, 1), high: Number.NaN };
    expect(judge({ mode: 'part', rule: 'worst-case', lower: margin(3, 1), upper: unsure })).toMatchObject({
      asNew: { state: 'not proven', at: 'upper' },
      note: expect.stringContaining('cannot be computed'),
    });
    expect(
      judge({ mode: 'part', rule: 'worst-case', lower: margin(-3, 1), upper: unsure }).asNew,
    ).toMatchObject({
      state: 'out of limits',
      at: 'lower',
    });
  });

  test('a figure without allowance for measuring error needs no case but its own', () =>
    expect(
      judge({ mode: 'part', rule: 'simple', upper: { ...margin(3, 1), low: Number.NaN } }).asNew.state,
    ).toBe('proven in limits'));
});

describe('a value that stands on its limit', () => {
  // 2.2500 in +0.0005 -0 against limits of 2.2500 and 2.2505, in metres: subtraction leaves a hair.
  const [low, high] = [0.05715, 0.0571627];
  const cut = { low: 2.25 * 0.0254, high: 2.2505 * 0.0254 };
  const value = (cut.low + cut.high) / 2;

  test('is inside, whatever the last bit says', () => {
    const lower = {
      value: value - low,
      low: cut.low - low - 7e-18,
      high: cut.high - low,
      centre: value - low,
      u: 1e-6,
    };
    const upper = {
      value: high - value,
      low: high - cut.high - 7e-18,
      high: high - cut.low,
      centre: high - value,
      u: 1e-6,
    };
    expect(plan(lower, upper).asNew.state).toBe('holds');
  });

  test('is inside also with no spread at all, when the size of the value is told', () => {
    const bare = { value: -7e-18, low: -7e-18, high: -7e-18, centre: -7e-18, u: 0 };
    for (const rule of RULES)
      expect(judge({ mode: 'plan', rule, lower: bare, scale: 0.057 }).asNew.state).toBe('holds');
  });
});

test('by every rule a wider spread never proves more', () => {
  const rank = { in: 0, near: 1, open: 2 } as const;
  const grade = (state: string) =>
    state === 'holds' ? rank.in : state === 'holds, near the edge' ? rank.near : rank.open;
  fc.assert(
    fc.property(
      fc.constantFrom(...RULES),
      fc.double({ min: 0, max: 5, noNaN: true }),
      fc.double({ min: 0, max: 5, noNaN: true }),
      fc.double({ min: 0.01, max: 3, noNaN: true }),
      fc.double({ min: 1, max: 3, noNaN: true }),
      (rule, a, b, half, wider) => {
        const narrow = plan(margin(a, half), margin(b, half), rule).asNew.state;
        const wide = plan(margin(a, half * wider), margin(b, half * wider), rule).asNew.state;
        expect(grade(wide)).toBeGreaterThanOrEqual(grade(narrow));
      },
    ),
    { seed: 5, numRuns: 2000 },
  );
});
