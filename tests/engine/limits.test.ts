import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import type { CellRecord, DecisionRule, Limits } from '../../shared/sheet/format.ts';
import { inches, ofKind, plain, SQRT3, thou } from './closed-form.ts';

/** Ships without types. */
const jstat: { normal: { cdf(x: number, mean: number, deviation: number): number } } = createRequire(
  import.meta.url,
)('jstat');

const judged = (cell: CellRecord, rule: DecisionRule = 'worst-case') => {
  const sheet = inches([cell], { rule });
  return { check: sheet.output('a').check, remarks: sheet.byName('a')?.remarks ?? [] };
};
const read = (entry: string, limits: Limits) => judged(plain('a', 'measured', entry, { limits }));

describe('wear', () => {
  const shaft: Limits = { lower: '1.748 in', upper: '1.750 in', wear: '1.745 in', metalOn: 'high' };
  it.each([
    ['1.7490 in ± .0002 in', 'proven in limits as new, where read; proven serviceable, where read'],
    [
      '1.7460 in ± .0002 in',
      'out of limits as new at the lower limit, metal gone; proven serviceable, near the edge at the wear limit, where read',
    ],
    [
      '1.7451 in ± .0002 in',
      'out of limits as new at the lower limit, metal gone; not proven serviceable at the wear limit, metal gone',
    ],
    [
      '1.7440 in ± .0002 in',
      'out of limits as new at the lower limit, metal gone; not serviceable at the wear limit, metal gone',
    ],
    ['1.7510 in ± .0002 in', 'out of limits as new; not serviceable at the upper limit, metal on'],
  ])('leads down on a shaft: %s is %s', (entry, words) => {
    expect(read(entry, shaft).check.words).toBe(words);
  });

  it('is not guessed at where nothing says which way it leads', () => {
    const found = read('1.7460 in ± .0002 in', { wear: '1.745 in' });
    expect(found.check.words).toBe('waiting');
    expect(found.remarks.map(({ message }) => message)).toEqual([expect.stringMatching(/metal is still on/)]);
    expect(read('1.7460 in ± .0002 in', { wear: '1.745 in', metalOn: 'high' }).check.words).toBe(
      'proven serviceable, where read',
    );
    expect(read('1.7460 in ± .0002 in', { wear: '1.745 in', lower: '1.748 in' }).check.inService?.state).toBe(
      'proven in limits',
    );
  });
});

it('limits the wrong way round are said to be, and nothing is judged by them', () => {
  const found = read('1.7460 in ± .0002 in', { lower: '1.75 in', upper: '1.74 in' });
  expect(found.check.words).toBe('entry in error');
  expect(found.remarks[0]).toMatchObject({
    grade: 'error',
    message: expect.stringMatching(/wrong way round/),
  });
});

it.each(['2.249..2.250 in', '2.249 in +.001 -0', '50 mm H7', '50 mm H7/g6'])(
  '%s as one limit is asked about: the middle of two limits is neither',
  (lower) => {
    const found = judged(plain('a', 'chosen', '2.25 in', { limits: { lower } }));
    expect(found.check.words).toBe('entry in error');
    const { problems } = inches([plain('a', 'chosen', '2.25 in', { limits: { lower } })]).byName('a') ?? {};
    expect(problems).toEqual([
      expect.objectContaining({ field: 'limits.lower', message: expect.stringMatching(/gives two limits/) }),
    ]);
  },
);

it.each([
  ['2.25 in', '20 under', '= 2.25 in - 20 thou'],
  ['2.25 in', '-.001', '= 2.25 in - .001 in'],
  ['2.25', '+.001 in', '= 2.25 in + .001 in'],
  ['2.2500; 2.2501 in', '20 under', undefined],
])('of %s, %s as a limit is how far off it may be: asked about', (entry, lower, meant) => {
  const sheet = inches([
    plain('a', entry.includes(';') ? 'measured' : 'chosen', entry, { limits: { lower } }),
  ]);
  expect(sheet.output('a').check.words).toBe('entry in error');
  const problem = sheet.byName('a')?.problems[0];
  expect(problem).toMatchObject({ field: 'limits.lower', message: expect.stringMatching(/the size itself/) });
  expect(problem?.choices?.map((choice) => choice.entry)).toEqual(meant && [meant]);
});

it('what is itself a difference may have limits below nothing, and an undersize one so far under', () => {
  const fit = [
    plain('bore', 'given', '2.25 in'),
    plain('a', 'worked', '= bore - 2.2505 in', { limits: { lower: '-.001', upper: '+.001' } }),
  ];
  expect(inches(fit).output('a').check.words).toBe('holds');
  expect(judged(plain('a', 'chosen', '20 under', { limits: { lower: '30 under' } })).check.words).toBe(
    'holds',
  );
});

it('a value that is its own limit is told', () => {
  const sheet = inches([plain('a', 'measured', '2.25 in ± .001 in', { limits: { upper: '= a + .01 in' } })]);
  expect(sheet.output('a').check.words).toBe('entry in error');
  expect(sheet.byName('a')?.problems[0]?.message).toMatch(/judges nothing/);
});

it('a wear limit on the side where metal is still on is told, and nothing judged by it', () => {
  const found = read('1.7490 in ± .0002 in', {
    lower: '1.748',
    upper: '1.750',
    wear: '1.755',
    metalOn: 'high',
  });
  expect(found.check.words).toBe('entry in error');
  expect(found.remarks[0]?.message).toMatch(/wear leads the other way/);
});

it('a bare limit of what is shown in thou is not taken for inches, on a plain line and on an output', () => {
  const { check } = judged(plain('a', 'given', '3 thou', { display: 'thou', limits: { upper: '4' } }));
  expect(check.words).toBe('waiting');
  const press = {
    ...ofKind('bush-close-in', 'press', {}),
    outputs: { close_in: { limits: { upper: '4' } } },
  };
  expect(inches([press]).byName('press')?.problems).toEqual([
    expect.objectContaining({
      field: 'outputs.close_in.limits.upper',
      choices: [expect.objectContaining({ entry: '4 thou' }), expect.objectContaining({ entry: '4 in' })],
    }),
  ]);
});

it.each([
  ['issued', { issued: '20 under' }],
  ['measured.entry', { measured: { entry: '20 under' } }],
])('how far from its size a part is cut is no size %s', (field, more) => {
  const of = (entry: string) => inches([plain('a', 'chosen', entry, more)]).byName('a')?.problems;
  expect(of('2.25 in')).toEqual([
    expect.objectContaining({ field, message: expect.stringMatching(/the size itself is wanted/) }),
  ]);
  expect(of('10 under')).toEqual([]);
});

describe('each rule against its closed form, through the engine', () => {
  /** Sizes in tenths of a thousandth on either side of the limits and on them; limits with and without spread. */
  const cases = [0, 5, 9, 10, 11, 12, 15, 20, 28, 29, 30, 31, 40].flatMap((y) =>
    [0, 1, 4, 8].flatMap((U) =>
      // A reading without doubt proves nothing: tests/engine/no-gauge.test.ts
      [0, 2].flatMap((own) =>
        (U === 0 ? (['given'] as const) : (['measured', 'given'] as const)).map((role) => ({
          y,
          U,
          own,
          role,
        })),
      ),
    ),
  );
  const names = {
    measured: ['proven in limits', 'proven in limits, near the edge', 'not proven', 'out of limits'],
    given: ['holds', 'holds, near the edge', 'may miss', 'misses'],
  };
  const noise = 1e-9;

  it.each(['worst-case', 'iso14253-2013', 'iso14253-2017', 'simple'] as const)('%s', (rule) => {
    const text = (tenths: number, spread: number) => `${tenths / 10} thou ± ${spread / 10} thou`;
    const lines = cases.map(({ y, U, own, role }, i) => {
      const limits = { lower: text(10, own), upper: text(30, own), metalOn: 'low' as const };
      return plain(`a${i}`, role, text(y, U), { limits });
    });
    const sheet = inches(lines, { rule });
    for (const [i, { y, U, own, role }] of cases.entries()) {
      const uy = role === 'measured' ? U / 2 : U / SQRT3;
      const u = Math.hypot(uy, own / SQRT3);
      const half = {
        'worst-case': U + own,
        'iso14253-2013': 2 * u,
        'iso14253-2017': 1.6448536269514722 * u,
        simple: 0,
      }[rule];
      const margins = [y - 10, 30 - y];
      const low = Math.min(...margins) - half;
      const missed = margins.reduce(
        (sum, d) => sum + (u > 0 ? jstat.normal.cdf(-d / u, 0, 1) : d < 0 ? 1 : 0),
        0,
      );
      const out = Math.min(...margins) + half < -noise || (rule === 'iso14253-2017' && missed >= 0.95);
      const open = rule === 'iso14253-2017' ? missed > 0.05 : low < -noise;
      const grade = out ? 3 : open ? 2 : Math.min(...margins) < 20 / 4 - noise ? 1 : 0;
      const { check } = sheet.output(`a${i}`);
      const where = `${y} ± ${U} in 10 to 30 ± ${own}, ${role}`;
      expect(check.asNew.state, where).toBe(names[role][grade]);
      expect(check.rule).toBe(rule);
      if (!out) continue;
      expect(check.asNew.side, where).toBe(y < 20 ? 'metal on' : 'metal gone');
      expect(check.asNew.by, where).toBeCloseTo((-Math.min(...margins) / 10) * thou, 12);
    }
  });
});

it('a limit without a figure says why: for which line it waits, or what cannot be; what cannot be read is told once', () => {
  const of = (limit: string, other = plain('b', 'given', '', { quantity: 'length' })) =>
    inches([other, plain('a', 'given', '1 in', { limits: { lower: limit } })]).output('a');
  expect(of('= b')).toMatchObject({
    check: { asNew: { state: 'waiting' } },
    problem: { kind: 'blank', originId: 'c_b', message: expect.stringMatching(/^Waits for `b`/) },
  });
  expect(of('= b', plain('b', 'given', '2 in')).problem).toBeUndefined();
  expect(of('= 1 in / 0').problem?.message).toMatch(/^Division by zero/);
  expect(of('= nobody')).not.toHaveProperty('problem');
});
