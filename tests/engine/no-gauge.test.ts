import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { judge } from '../../shared/checks/check.ts';
import type { CellRecord, DecisionRule } from '../../shared/sheet/format.ts';
import { inches, ofKind, plain } from './closed-form.ts';

/** A measured value proves by its uncertainty (JCGM 106:2012, 7.2), which the instrument has a part in (JCGM 100, 4.3). */
const limits = { lower: '2.249 in', upper: '2.251 in' };
const micrometer = ofKind('gauge', 'mike', { gauge: 'micrometer-2-3-in' });
const RULES: readonly DecisionRule[] = ['worst-case', 'iso14253-2013', 'iso14253-2017'];

const judged = (cells: CellRecord[], name: string, rule: DecisionRule = 'worst-case') => {
  const sheet = inches([micrometer, ...cells], { rule });
  return {
    state: sheet.output(name).check.asNew.state,
    said: (sheet.byName(name)?.remarks ?? []).map(({ message }) => message).join('\n'),
  };
};
const bore = (entry: string, more: Partial<CellRecord> = {}) =>
  plain('bore', 'measured', entry, { limits, ...more });

describe.each(RULES)('by %s a reading with neither gauge nor ±', (rule) => {
  it.each(['2.2500 in', '2.25000 in', '2.2501; 2.2499; 2.2500 in', '2.2500; 2.2500 in', '2.2500 in ± 0 in'])(
    '%s in the middle of its limits is not proven, and says what to do',
    (entry) => {
      const { state, said } = judged([bore(entry)], 'bore', rule);
      expect(state).toBe('not proven');
      expect(said).toMatch(/proves nothing\. Name its gauge, or write ± behind it/);
    },
  );

  it('is proven with a gauge, or a doubt of its own', () => {
    expect(judged([bore('2.2500 in', { gauge: 'mike' })], 'bore', rule).state).toBe('proven in limits');
    expect(judged([bore('2.2500 in ± .0002 in')], 'bore', rule).state).toBe('proven in limits');
    expect(judged([bore('2.2500; 2.2501 in ± .0002 in')], 'bore', rule).state).toBe('proven in limits');
  });

  it('is out for certain only far out', () => {
    expect(judged([bore('2.2600 in')], 'bore', rule).state).toBe('out of limits');
    expect(judged([bore('2.2511 in')], 'bore', rule).state).toBe('not proven');
  });
});

it('what hangs on such a reading is not proven either, and names it', () => {
  const chain = (journal: Partial<CellRecord>) => [
    plain('bore', 'measured', '2.2530 in', { gauge: 'mike' }),
    plain('journal', 'measured', '2.2500 in', journal),
    plain('clearance', 'worked', '= bore - journal', { limits: { lower: '.001 in', upper: '.006 in' } }),
  ];
  const { state, said } = judged(chain({}), 'clearance');
  expect(state).toBe('not proven');
  expect(said).toMatch(/^`journal` was read with neither gauge nor ±: .*Name its gauge there/);
  expect(judged(chain({ gauge: 'mike' }), 'clearance')).toEqual({ state: 'proven in limits', said: '' });
});

it('a gauge that a cell of the library counts itself is a gauge', () => {
  const depth = (gauge: string) => ({
    ...ofKind('depth-by-difference', 'proud', { to_face: '.5630 in', to_part: '.5595 in', gauge }),
    outputs: { proud: { limits: { lower: '.001 in', upper: '.010 in' } } },
  });
  const state = (gauge: string) =>
    inches([micrometer, depth(gauge)]).output('proud', 'proud').check.asNew.state;
  expect(state('mike')).toBe('proven in limits');
  expect(state('')).toBe('not proven');
});

it('a size as measured is not proven by the figure alone', () => {
  const cut = (measured: CellRecord['measured']) =>
    judged([plain('bush', 'chosen', '2.25 in', { tolerance: '± .0005 in', limits, measured })], 'bush').state;
  expect(cut({ entry: '2.2500 in' })).toBe('not proven');
  expect(cut({ entry: '2.2500 in', gauge: 'mike' })).toBe('proven in limits');
});

it('a plan stays what it was, and the bare figure decides where that was chosen', () => {
  const plan = [
    plain('journal', 'measured', '2.2500 in'),
    plain('bush', 'chosen', '= journal + .003 in', {
      tolerance: '± .0005 in',
      limits: { upper: '2.26 in' },
    }),
  ];
  expect(judged(plan, 'bush').state).toBe('holds');
  expect(judged([bore('2.2500 in')], 'bore', 'simple').state).toBe('proven in limits');
});

it('a count is exact when it says so', () => {
  const teeth = (entry: string) =>
    judged(
      [plain('teeth', 'measured', entry, { quantity: 'number', limits: { lower: '30', upper: '34' } })],
      'teeth',
    ).state;
  expect(teeth('32 ± 0')).toBe('proven in limits');
});

it('a doubt known in part that is small even tenfold beside what is known decides nothing', () => {
  const of = (unstated: number) =>
    judge({
      mode: 'part',
      rule: 'worst-case',
      unstated: 'why',
      lower: { value: 30, low: 20 - unstated, high: 40 + unstated, centre: 30, u: 5, unstated },
    });
  expect(of(0.9)).toMatchObject({ asNew: { state: 'proven in limits' } });
  expect(of(0.9)).not.toHaveProperty('note');
  expect(of(1.1)).toMatchObject({ asNew: { state: 'not proven' }, note: 'why' });
});

test('no part whose whole doubt is known in part only is ever proven in limits', () => {
  const size = fc.double({ min: -1, max: 1, noNaN: true });
  fc.assert(
    fc.property(
      fc.constantFrom(...RULES),
      size,
      size,
      fc.double({ min: 1e-6, max: 1, noNaN: true }),
      (rule, below, above, unstated) => {
        const margin = (value: number) => ({
          value,
          low: value - unstated,
          high: value + unstated,
          centre: value,
          u: unstated / 2,
          unstated,
        });
        const { asNew } = judge({ mode: 'part', rule, lower: margin(below), upper: margin(above) });
        expect(asNew.state).toMatch(/not proven|out of limits/);
      },
    ),
    { seed: 106 },
  );
});

it('a gauge of lengths counts for nothing beside a force, and says so', () => {
  const force = plain('force', 'measured', '200 lbf', {
    quantity: 'force',
    gauge: 'mike',
    limits: { lower: '150 lbf', upper: '250 lbf' },
  });
  const sheet = inches([micrometer, force]);
  expect(sheet.output('force').check.asNew.state).not.toContain('proven in limits');
  expect(sheet.byName('force')?.problems.map(({ message }) => message)).toEqual([
    '`mike` measures lengths, and 200 lbf is a force: take the gauge away here, and write ± behind the reading.',
  ]);
});
