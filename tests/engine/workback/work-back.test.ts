import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import { computeSheet } from '../../../src/engine/compute.ts';
import { GuardedEngine } from '../../../src/engine/guarded-engine.ts';
import { TrialSheet, withEntry } from '../../../src/engine/trial/trial-sheet.ts';
import { Desk } from '../../../src/engine/workback/desk.ts';
import type { Answer, AskedQuestion } from '../../../src/engine/workback/question.ts';
import { inch, ofKind, plain } from '../closed-form.ts';
import { sheetOf } from '../random-sheet.ts';

const inches = (cells: CellRecord[], more: Partial<SheetFile> = {}): SheetFile => ({
  ...sheetOf(cells),
  units: { length: 'in' },
  ...more,
});

type Asked = Partial<AskedQuestion> & { of: string; want: string; by: string };

const opened = (file: SheetFile) => {
  const trial = new TrialSheet(library);
  trial.load(file);
  const desk = new Desk(trial);
  const question = ({ of, by, want, ...more }: Asked): AskedQuestion => {
    const [name = '', output = 'value'] = of.split('.');
    const [line = '', input] = by.replace(' tolerance', '').split('.');
    const idOf = (called: string) => file.cells.find((one) => one.name === called)?.id ?? '';
    const field = by.endsWith(' tolerance') ? 'tolerance' : input ? `inputs.${input}` : 'entry';
    return { figure: { cell: idOf(name), output }, want, change: { cell: idOf(line), field }, ...more };
  };
  return { trial, engine: desk, question, ask: (asked: Asked): Answer => desk.workBack(question(asked)) };
};
const ask = (file: SheetFile, asked: Asked): Answer => opened(file).ask(asked);
const texts = ({ solutions }: Answer): string[] => solutions.map(({ text }) => text);

/** The figure once an answer has been typed in, by an engine that knows nothing of the question. */
const forward = (file: SheetFile, { change, figure }: AskedQuestion, text: string) => {
  const cells = file.cells.map((one) => (one.id === change.cell ? withEntry(one, change.field, text) : one));
  const sheet = computeSheet({ ...file, cells }, library);
  const out = sheet.cells.find(({ id }) => id === figure.cell)?.outputs[figure.output];
  if (!out) throw new Error('no figure');
  return out;
};

const fit = inches([
  plain('journal', 'measured', '1.7480 in ± 0.0002 in'),
  plain('bore', 'chosen', '1.7510 in', { tolerance: '± 0.0005 in', limits: { metalOn: 'low' } }),
  plain('held', 'chosen', '= bore + 1 thou', { tolerance: '+0.0002 -0 in' }),
  plain('clearance', 'worked', '= bore - journal', { limits: { lower: '2 thou', upper: '5 thou' } }),
  plain('over', 'worked', '= held - journal'),
  plain('released', 'chosen', '1 in', { issued: '1.001 in' }),
  plain('cut', 'chosen', '1 in', { measured: { entry: '1.0002 in' } }),
  plain('fixed', 'given', '1 in', { locked: true }),
  plain('all', 'worked', '= released + cut + fixed + journal + bore'),
]);

describe('a bore for a clearance', () => {
  // By hand: 1.7480 + 0.0037.
  test('is the journal and the clearance', () => {
    expect(texts(ask(fit, { of: 'clearance', want: '3.7 thou', by: 'bore' }))).toEqual(['1.7517 in']);
  });
  test('is found through a size that is held', () => {
    expect(texts(ask(fit, { of: 'over', want: '5.2 thou', by: 'bore' }))).toEqual(['1.7522 in']);
  });
  test('lies in the middle of its limits', () => {
    expect(texts(ask(fit, { of: 'clearance', want: 'middle', by: 'bore' }))).toEqual(['1.7515 in']);
  });
  // Worst case: 0.0005 of the bore and 0.0002 of the journal above the least of 2 thou.
  test('keeps its lower limit with the whole of its spread', () => {
    expect(texts(ask(fit, { of: 'clearance', want: 'lower limit', by: 'bore' }))).toEqual(['1.7507 in']);
    expect(texts(ask(fit, { of: 'clearance', want: 'upper limit', by: 'bore' }))).toEqual(['1.7523 in']);
  });
  // ISO 14253-1:2013, k = 2: u^2 = (0.0005^2)/3 + (0.0001^2)/1.
  test('keeps it by expanded uncertainty under that rule', () => {
    const [one] = ask(
      { ...fit, rule: 'iso14253-2013' },
      { of: 'clearance', want: 'lower limit', by: 'bore' },
    ).solutions;
    const U = 2 * Math.sqrt(0.0005 ** 2 / 3 + 0.0001 ** 2);
    expect((one?.value as number) / inch).toBeCloseTo(1.75 + U, 4);
  });
  // What is left of 3 thou - 2 thou once the journal has taken 0.2.
  test('has the tolerance that just keeps the limit', () => {
    expect(texts(ask(fit, { of: 'clearance', want: 'lower limit', by: 'bore tolerance' }))).toEqual([
      '± 0.0008 in',
    ]);
  });
  test('is stepped to sizes that can be made, the aim where metal is still on', () => {
    const [one] = ask(fit, { of: 'clearance', want: '3.7 thou', by: 'bore', steps: '0.0005 in' }).solutions;
    expect(one?.made?.map(({ text, isAim }) => [text, isAim])).toEqual([
      ['1.7515 in', true],
      ['1.752 in', undefined],
    ]);
  });
  // Fraction drills about 1.751 in: 1 3/4 and 1 25/32 (ASME B94.11M).
  test('is stepped to drills', () => {
    const [one] = ask(fit, { of: 'clearance', want: '3.7 thou', by: 'bore', steps: 'drills' }).solutions;
    expect(one?.made?.map(({ text }) => text)).toEqual(['1 3/4 in', '1 25/32 in']);
  });
  test.each([
    ['1 1/2 in; 1 3/4 in; 1.7812 in; 2 in', ['1 3/4 in', '1.7812 in'], 0],
    // The unit behind the last counts for those before it; each is written as it was listed.
    ['1 3/4; 1.7812; 2 in', ['1 3/4 in', '1.7812 in'], 0],
    ['44 mm; 45 mm; 1.74 in;', ['1.74 in', '45 mm'], 0],
    // None below: the one there is is told, though nothing can be taken off a bore that is too large.
    ['2 in; 3 in', ['2 in'], 0],
  ])('is stepped to the sizes there are: %s', (steps, made, aim) => {
    const [one] = ask(fit, { of: 'clearance', want: '3.7 thou', by: 'bore', steps }).solutions;
    expect(one?.made?.map(({ text }) => text)).toEqual(made);
    expect(one?.made?.findIndex(({ isAim }) => isAim)).toBe(aim);
  });
  test('moves the inputs still to be cut before others, and none that stays put', () => {
    const { engine, question } = opened(fit);
    const offers = engine.offers(question({ of: 'all', want: '', by: 'bore' }).figure, '4 in');
    expect(offers.inputs.map(({ name }) => name)).toEqual(['bore']);
  });
  test('tells what every other check then says', () => {
    const { engine, question } = opened(fit);
    const found = engine.consequences(
      question({ of: 'clearance', want: '', by: 'bore' }).change,
      '1.7400 in',
    );
    expect(found.turned.map(({ cell, before, after }) => [cell, before.words, after.words])).toEqual([
      ['c_clearance', 'holds', expect.stringMatching(/^misses at the lower limit/)],
    ]);
    // Nothing of it stays on the sheet.
    expect(texts(opened(fit).ask({ of: 'clearance', want: '3.7 thou', by: 'bore' }))).toEqual(['1.7517 in']);
  });
});

// Lines whose author named no quantity hold what their entries turned out to be. By hand: 10 TAN(t) = 6 at 30.9638 degrees;
// 49.97 mm is 0.03 mm below 50 mm.
describe('without a quantity', () => {
  const bare = (name: string, role: CellRecord['role'], entry: string, more: Partial<CellRecord> = {}) => ({
    id: name,
    name,
    role,
    entry,
    ...more,
  });
  const file: SheetFile = {
    ...sheetOf([
      bare('bore', 'chosen', '50 mm', { tolerance: 'H7' }),
      bare('shaft', 'chosen', '49.95 mm', { tolerance: '± 0.01 mm' }),
      bare('gap', 'worked', '= bore - shaft', { limits: { lower: '0.03 mm' } }),
      bare('turned', 'chosen', '30 deg', { tolerance: '± 1 deg' }),
      bare('rise', 'worked', '= 10 mm * TAN(turned)', { limits: { upper: '6 mm' } }),
      bare('teeth', 'chosen', '= 8'),
      bare('pitch', 'worked', '= 40 mm / teeth'),
      bare('square', 'worked', '= 1 mm ^ 2 / shaft'),
      bare('off', 'worked', '= ABS(shaft - 49.9 mm)'),
    ]),
    units: { length: 'mm' },
  };
  test.each([
    { of: 'gap', want: 'lower limit', by: 'shaft tolerance', answer: '± 0.02 mm' },
    { of: 'rise', want: 'upper limit', by: 'turned tolerance', answer: '± 0.96375 deg' },
    { of: 'pitch', want: '4 mm', by: 'teeth', answer: '= 10' },
    { of: 'off', want: '0 mm', by: 'shaft', answer: '49.900 mm' },
  ])('$by is worked back in its own unit', ({ answer, ...asked }) => {
    expect(texts(ask(file, asked))).toEqual([answer]);
    const { question } = opened(file);
    expect(forward(file, question(asked), answer).planned).toBeDefined();
  });
  test('an entry that cannot be read is said to be that', () => {
    expect(ask(file, { of: 'square', want: '1 mm', by: 'shaft' }).reason).toBe(
      'The entry of `square` cannot be read: put it right first.',
    );
  });
});

describe('why there is no answer', () => {
  const sheet = inches([
    plain('x', 'chosen', '2 in'),
    plain('other', 'chosen', '2 in'),
    plain('square', 'worked', '= x * x / 1 in + 1 in'),
    plain('step', 'worked', '= IF(x > 2.2 in; 3 in; 1 in)'),
    plain('pole', 'worked', '= 1 in * 1 in / (x - 2.2 in)'),
    plain('two', 'worked', '= (x - 1 in) * (x - 3 in) / 1 in'),
    plain('level', 'worked', '= ROUNDUP(x / 1 in; 0) * 1 in'),
    { id: 'note', role: 'remark', name: 'note', note: 'text' },
  ]);
  const reason = (asked: Asked, file = sheet): string | undefined => {
    const answer = ask(file, asked);
    expect(answer.solutions).toEqual([]);
    return answer.reason;
  };
  test.each<[string, Asked, RegExp]>([
    ['no influence', { of: 'square', want: '3 in', by: 'other' }, /no influence/],
    ['out of reach', { of: 'square', want: '0.5 in', by: 'x' }, /Out of reach.*from .* to .* in/],
    [
      "out of a range of one's own",
      { of: 'square', want: '10 in', by: 'x', between: '1 in .. 2 in' },
      /from 1.0000 to 2.0000 in/,
    ],
    [
      'a jump',
      { of: 'step', want: '2 in', by: 'x' },
      /jumps past it: at 2.2000 in .* from 1.0000 in to 3.0000 in/,
    ],
    ['a pole', { of: 'pole', want: '0 in', by: 'x' }, /goes beyond all bounds|Out of reach/],
    ['text', { of: 'square', want: '3 in', by: 'note' }, /is text/],
    ['no limits', { of: 'square', want: 'middle', by: 'x' }, /no two limits/],
    ['a line worked out', { of: 'square', want: '3 in', by: 'two' }, /is worked out from other lines/],
    ['a range that is none', { of: 'square', want: '3 in', by: 'x', between: '2 in' }, /two ends/],
    ['a step that is none', { of: 'square', want: '3 in', by: 'x', steps: '0 in' }, /step to make it in/],
    [
      'a list with no size in it',
      { of: 'square', want: '3 in', by: 'x', steps: '1 in; wide' },
      /“wide” is no size/,
    ],
    ['an empty list', { of: 'square', want: '3 in', by: 'x', steps: ' ; ' }, /sizes there are/],
    ['another quantity', { of: 'square', want: '3 lbf', by: 'x' }, /length/],
  ])('%s', (_, asked, words) => expect(reason(asked)).toMatch(words));
  test.each<[string, RegExp]>([
    ['journal', /was read off the part/],
    ['released', /has been released to cut at 1.001 in/],
    ['cut', /has been measured: it stays/],
    ['fixed', /is locked/],
  ])('%s stays put', (by, words) => expect(reason({ of: 'all', want: '4 in', by }, fit)).toMatch(words));
  test('several answers are all told', () => {
    expect(texts(ask(sheet, { of: 'two', want: '-0.75 in', by: 'x' }))).toEqual(['1.5000 in', '2.5000 in']);
  });
  test('a stretch of answers is told by its ends', () => {
    const [one] = ask(sheet, { of: 'level', want: '3 in', by: 'x' }).solutions;
    expect(one?.all?.map((end) => end / inch)).toEqual([expect.closeTo(2, 6), expect.closeTo(3, 6)]);
  });
});

test('a row of a table is found by trying each', () => {
  const file = inches([
    ofKind('material', 'metal', { material: 'c93200' }),
    plain('E', 'worked', '= metal.E', { quantity: 'pressure' }),
  ]);
  const { solutions } = ask(file, { of: 'E', want: '30 Mpsi', by: 'metal.material' });
  expect(solutions[0]?.name).toMatch(/[Ss]teel/);
  expect(solutions.length).toBeGreaterThan(3);
});

// A law: worked back and then forward it is what was wanted.
test('work back then forward gives what was wanted', () => {
  const length = fc.integer({ min: 500, max: 4000 }).map((n) => `${(n / 1000).toFixed(3)} in`);
  const formula = fc.constantFrom(
    '= a + b - c',
    '= a * b / c',
    '= (a ^ 2 - b ^ 2) / (a + c)',
    '= SQRT(a ^ 2 + b * c)',
    '= IF(a > b; 2 * a - b; a + c)',
    '= MAX(a; b) - c / 3',
    '= a * EXP(b / 10 in) - c',
  );
  let answered = 0;
  fc.assert(
    fc.property(
      fc.array(length, { minLength: 3, maxLength: 3 }),
      formula,
      length,
      fc.constantFrom('a', 'b', 'c'),
      (values, text, want, by) => {
        const file = inches([
          ...['a', 'b', 'c'].map((name, i) =>
            plain(name, 'chosen', values[i] as string, { tolerance: '± 0.001 in' }),
          ),
          plain('y', 'worked', text),
        ]);
        const { ask: answer, question, trial } = opened(file);
        const asked = { of: 'y', want, by };
        for (const one of answer(asked).solutions) {
          answered++;
          const got = forward(file, question(asked), one.text).planned?.value as number;
          const wanted = Number.parseFloat(want) * inch;
          expect(Math.abs(got - wanted)).toBeLessThan(2e-5 * wanted);
          expect(Math.abs(got - one.figure)).toBeLessThan(1e-12);
        }
        trial.destroy();
      },
    ),
    { numRuns: 60, seed: 18 },
  );
  expect(answered).toBeGreaterThan(40);
});

// A second method: the root finder of a general numerical library over sheets worked out anew for every trial.
test('a general library finds the same', async () => {
  const name = 'fmin/src/bisect.js';
  const { bisect } = (await import(/* @vite-ignore */ name)) as {
    bisect: (f: (x: number) => number, a: number, b: number, more: { tolerance: number }) => number;
  };
  const file = inches([
    ofKind('interference-fit', 'fit', {
      contact_diameter: '2.25 in',
      interference: '2 thou',
      inner_bore: '1.75 in',
      outer_diameter: '3.5 in',
      length: '3 in',
      inner_material: 'bronze',
      outer_material: 'iron',
      friction_pair: 'bronze-cast-iron-oiled',
    }),
    ofKind('material', 'bronze', { material: 'c93200' }),
    ofKind('material', 'iron', { material: 'gray-iron-30' }),
  ]);
  const { ask: answer, question } = opened(file);
  const whole = new GuardedEngine(library);
  whole.load(file);
  for (const [want, by, from, to, unit] of [
    ['2000 psi', 'fit.interference', 1e-5, 5e-3, 'in'],
    ['2000 psi', 'fit.inner_bore', 0.5, 2.2, 'in'],
    ['1800 psi', 'fit.outer_diameter', 2.3, 9, 'in'],
  ] as const) {
    const asked = { of: 'fit.pressure', want, by };
    const psi = 6894.757293168361;
    const { change, figure } = question(asked);
    const line = file.cells.find(({ id }) => id === change.cell) as CellRecord;
    const off = (x: number): number => {
      const { cells } = whole.apply({ changed: [withEntry(line, change.field, `${x} ${unit}`)] });
      const value = cells.find(({ id }) => id === figure.cell)?.outputs[figure.output]?.planned?.value;
      return (value ?? Number.NaN) - Number.parseFloat(want) * psi;
    };
    const [one] = answer(asked).solutions;
    const root = bisect(off, from, to, { tolerance: 1e-9 });
    whole.apply({ changed: [line] });
    // An answer is written in so few places that the figure is within a hundred-thousandth.
    expect((one?.value as number) / inch).toBeCloseTo(root, 5);
  }
  whole.destroy();
});

describe('a thread', () => {
  const tapped = inches([
    ofKind('tap-drill', 'tap', { thread: '5/16-18 UNC', share: '75 %' }),
    ofKind('thread-limits', 'nut', { thread: '3/8-16 UNC', class: '2B' }),
  ]);
  const first = (asked: Asked): string | undefined => texts(ask(tapped, asked))[0];

  // Percent of thread = 76.98 n (D - hole): 0.375 in less 75 / (76.98 x 16). The drill for it is 5/16 in (ASME B1.1 lists).
  test('is found by the hole it is tapped in', () => {
    expect(first({ of: 'tap.hole', want: '0.3141 in', by: 'tap.thread' })).toBe('3/8-16 UNC');
    expect(ask(tapped, { of: 'tap.hole', want: '0.3141 in', by: 'tap.thread' }).tried).toMatch(
      /^Tried: the unified threads from half to twice its size, \d\d of them\.$/,
    );
  });
  // ASME B1.1: 3/8-16 UNC-2B and 3B, pitch diameter up to 0.3401 and 0.3387 in.
  test('is found by its class too', () => {
    expect(first({ of: 'nut.pitch_greatest', want: '0.3387 in', by: 'nut.class' })).toBe('3B');
  });
  test('in words that name none is looked for among the coarse ones', () => {
    const blank = inches([ofKind('tap-drill', 'tap', { thread: '', share: '75 %' })]);
    const { solutions, tried } = ask(blank, { of: 'tap.hole', want: '6.8 mm', by: 'tap.thread' });
    expect(solutions[0]?.text).toBe('M8');
    expect(tried).toContain('coarse threads');
  });
});
