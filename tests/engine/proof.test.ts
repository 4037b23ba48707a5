import { describe, expect, it, test } from 'vitest';
import type { CellRecord } from '../../shared/sheet/format.ts';
import { inches, ofKind, plain } from './closed-form.ts';

const LIMITS = { lower: '-1000 in', upper: '1000 in' };
const bore = plain('bore', 'measured', '2.0010 in ± .0001 in');
const shaft = plain('shaft', 'measured', '1.9990 in ± .0001 in');
const stateOf = (
  formula: string,
  others: readonly CellRecord[] = [],
  more: Partial<CellRecord> = {},
): string => {
  const sheet = inches([bore, shaft, ...others, plain('a', 'worked', formula, { limits: LIMITS, ...more })]);
  const { check, problem } = sheet.output('a');
  expect(problem).toBeUndefined();
  return check.asNew.state;
};

describe('a formula of the sheet', () => {
  test.each([
    ['= bore - shaft'],
    ['= (bore - shaft) / 2'],
    ['= 2/3 * bore'],
    ['= SQRT(bore^2 - shaft^2)'],
    ['= PI() * bore'],
    ['= MAX(0 in; bore - shaft)'],
    ['= IF(bore > 2 in; bore - shaft; 0 in)'],
    ['= bore'],
  ])('%s of what was measured proves', (formula) => expect(stateOf(formula)).toBe('proven in limits'));

  test.each([['= bore * 0.998'], ['= bore * 1.5'], ['= EXP(bore / shaft) * 1 in']])(
    '%s holds by calculation: its factor is a model',
    (formula) => expect(stateOf(formula)).toBe('holds by calculation'),
  );

  test('whose author says that it is geometry proves', () =>
    expect(stateOf('= bore * 0.998', [], { basis: 'geometry' })).toBe('proven in limits'));

  test.each([['= bore - 1.75 in'], ['= bore - width'], ['= bore - cut']])(
    '%s is a plan: not all of it is there',
    (formula) =>
      expect(
        stateOf(formula, [
          plain('width', 'given', '1.75 in'),
          plain('cut', 'chosen', '1.75 in', { tolerance: '± .001 in' }),
        ]),
      ).toBe('holds'),
  );

  test.each([['= MAX(bore; 1.5 * shaft - 2 in)'], ['= MIN(bore; 2.5 in)'], ['= MEDIAN(1 in; bore; 3 in)']])(
    '%s proves: what is written in it does not move it',
    (formula) => expect(stateOf(formula)).toBe('proven in limits'),
  );

  test.each([['= bore - 1.75 in'], ['= bore * pull / (100 N)']])(
    '%s is no part, though its author says that it is geometry',
    (formula) =>
      expect(
        stateOf(formula, [plain('pull', 'measured', '120 N ± 1 N', { quantity: 'force' })], {
          basis: 'geometry',
        }),
      ).toMatch(/^holds/),
  );

  test.each([['= wire + 0 * bore'], ['= MIN(wire; bore)'], ['= wire + (bore - ABS(bore))']])(
    '%s is no part: no reading moves it',
    (formula) =>
      expect(stateOf(formula, [plain('wire', 'given', '.029 in', { basis: 'equipment' })])).toBe('holds'),
  );

  test.each([
    ['= bore - ROUND(cut / 1 in; 0) * wire'],
    ['= bore - MROUND(cut; .5 in)'],
    ['= bore - CEILING(1.6 in; 1 in)'],
    ['= bore - THREADMAJOR("1/4-20 UNC")'],
  ])(
    '%s is a plan: a step hides the size it is taken from, and a table tells one of a part that is not there',
    (formula) => {
      const others = [
        plain('wire', 'given', '.029 in', { basis: 'equipment' }),
        plain('cut', 'chosen', '1.75 in', { tolerance: '± .001 in' }),
      ];
      expect(stateOf(formula, others)).toBe('holds');
      expect(stateOf(formula, others, { basis: 'geometry' })).toBe('holds');
    },
  );

  test.each([
    ['= bore * SIN(30 deg)'],
    ['= bore * SIN(PI() / 6)'],
    ['= bore * TAN(RADIANS(31))'],
    ['= bore * RADIANS(31)'],
  ])('%s is a plan: an angle is a size, however it is written', (formula) =>
    expect(stateOf(formula)).toBe('holds'),
  );

  test.each([['= bore * 2^0.01'], ['= bore * POWER(10; -0.1)'], ['= bore * INT(2.7)']])(
    '%s holds by calculation: a factor written another way',
    (formula) => expect(stateOf(formula)).toBe('holds by calculation'),
  );

  test('= bore * 2^0.5 is as long as the diagonal, and proves', () =>
    expect(stateOf('= bore * 2^0.5')).toBe('proven in limits'));

  test('with a wire or a block in it proves, where the line is said to be measuring equipment', () =>
    expect(stateOf('= bore - 3 * wire', [plain('wire', 'given', '.029 in', { basis: 'equipment' })])).toBe(
      'proven in limits',
    ));

  test('with a factor on a line of its own holds by calculation; with a count it proves', () => {
    const share = (entry: string) => plain('share', 'given', entry, { quantity: 'number' });
    expect(stateOf('= (bore - shaft) * share', [share('0.7')])).toBe('holds by calculation');
    expect(stateOf('= (bore - shaft) * share', [share('3')])).toBe('proven in limits');
  });
});

describe('what counts is what it moves with', () => {
  const planned = plain('cut', 'chosen', '1.75 in', { tolerance: '± .001 in' });
  test.each([
    ['= bore + 0 * cut'],
    ['= MAX(bore; cut)'],
    ['= IF(shaft > 1 in; bore; cut)'],
    ['= bore + (cut - cut)'],
  ])('%s names a plan and does not hang on it', (formula) =>
    expect(stateOf(formula, [planned])).toBe('proven in limits'),
  );

  test('a plan that stands on a limit counts, though it has no spread', () => {
    const width = [plain('width', 'given', '1.75 in')];
    expect(stateOf('= IF(width >= 1.75 in; bore; shaft)', width)).toBe('holds');
    expect(stateOf('= IF(width > 1.74 in; bore; shaft)', width)).toBe('proven in limits');
    // The same through lines of its own: a comparison, and a difference that is compared.
    const wide = [
      ...width,
      { id: 'wide', name: 'wide', role: 'worked' as const, entry: '= width >= 1.75 in' },
    ];
    expect(stateOf('= IF(wide; bore; shaft)', wide)).toBe('holds');
    const over = [...width, plain('over', 'worked', '= width - 1.75 in')];
    expect(stateOf('= IF(over >= 0 in; bore; shaft)', over)).toBe('holds');
    const none = plain('none', 'given', '0 in');
    expect(stateOf('= IF(none >= 0 in; bore; shaft)', [none])).toBe('holds');
    const clear = [
      ...width,
      { id: 'wide', name: 'wide', role: 'worked' as const, entry: '= width > 1.74 in' },
    ];
    expect(stateOf('= IF(wide; bore; shaft)', clear)).toBe('proven in limits');
  });

  test('a plan that may be the greater counts', () =>
    expect(
      stateOf('= MAX(bore; near)', [plain('near', 'chosen', '2.0008 in', { tolerance: '± .001 in' })]),
    ).toBe('holds'));

  test.each([['= cut + 0 * bore'], ['= MIN(bore; cut)'], ['= 3 * cut']])(
    '%s is no part for a reading that it names',
    (formula) => expect(stateOf(formula, [planned])).toBe('holds'),
  );
});

describe('read once', () => {
  test.each([
    ['= once.greatest - once.least'],
    ['= MAX(once.greatest; once.least) - once'],
    ['= copy.greatest - copy.least'],
  ])('%s is no figure of the part: what its one reading leaves at nothing is proven by none', (formula) =>
    expect(
      stateOf(formula, [
        plain('once', 'measured', '1.5000 in ± .0001 in'),
        plain('copy', 'measured', '= once'),
      ]),
    ).toBe('holds'),
  );

  test('beside what was read too, it is proven where read alone', () => {
    const once = plain('once', 'measured', '1.5000 in ± .0001 in');
    const round = plain('round', 'measured', '1.1; 1.1 | 1.1; 1.1 in ± .0001 in');
    const sum = plain('a', 'worked', '= round + once.greatest - once.least', { limits: LIMITS });
    const { check } = inches([once, round, sum]).output('a');
    expect(check.asNew.state).toBe('proven in limits');
    expect(check.where).toContain('`once` was read at one place');
  });
});

describe('the library’s own number', () => {
  test('is a plan where a figure moves with it, nothing too: a hole that is aimed square may lean', () => {
    const hole = ofKind('oil-hole', 'hole', { bore: '= inside', outside: '= bore', drill: '= shaft / 8' });
    const inside = plain('inside', 'measured', '1.0000 in ± .0001 in');
    const limited = { ...hole, outputs: { shift_along: { limits: LIMITS } } };
    const { check } = inches([bore, shaft, inside, limited]).output('hole', 'shift_along');
    expect(check.asNew.state).toBe('holds');
  });
});

describe('a bought part', () => {
  const state = (role: CellRecord['role'], entry: string) =>
    stateOf('= bore - ring', [plain('ring', role, entry)]);
  it('counts once what its certificate says is entered as its reading', () => {
    expect(state('given', '1.75 in ± .0005 in')).toBe('holds');
    expect(state('measured', '1.75 in ± .0005 in')).toBe('proven in limits');
  });
});

describe('a cell of the library', () => {
  test('by wires: the thread is proven by the reading over them, whatever wire and pitch are', () => {
    const wires = {
      ...ofKind('three-wire', 'thread', {
        over_wires: '0.5334 in ± .0002 in',
        wire: '.0481 in',
        pitch: '1/13 in',
      }),
      outputs: { pitch_diameter: { limits: { lower: '0.1 in', upper: '1 in' } } },
    };
    expect(inches([wires]).output('thread', 'pitch_diameter').check.asNew.state).toBe('proven in limits');
  });

  test.each([
    ['a key', 'key-size', { shaft: '= bore', system: 'metric' }, ['width', 'over_seat', 'over_way']],
    ['a disc key', 'woodruff-key', { shaft: '= bore', key: '608' }, ['sink', 'over_seat', 'over_way']],
    ['a bolt', 'drilled-screw', { thread: '3-4 UNC', bored: '= bore' }, ['wall', 'area_left']],
    ['an insert', 'thread-insert', { thread: '3-4 UNC', to_edge: '= bore' }, ['wall_left']],
    ['a tap', 'thread-limits', { thread: '3-4 UNC', hole: '= bore' }, ['thread_share']],
  ] as const)(
    'of %s that a table tells of nothing is proven, whatever was read',
    (_, kind, inputs, outputs) => {
      const own = {
        ...ofKind(kind, 'part', inputs),
        outputs: Object.fromEntries(
          outputs.map((name) => [
            name,
            { limits: { lower: name === 'thread_share' ? '-9' : name === 'area_left' ? '-9 in2' : '-9 in' } },
          ]),
        ),
      };
      const sheet = inches([bore, own]);
      for (const name of outputs)
        expect([name, sheet.output('part', name).check.asNew.state]).toEqual([name, 'holds']);
    },
  );

  test('of a line that takes a size of a thread nothing is proven either', () =>
    expect(stateOf('= bore - next.major / 2', [ofKind('thread-limits', 'next', { thread: '3-4 UNC' })])).toBe(
      'holds',
    ));

  test('how far a hole that was read lies over its class is proven', () => {
    const own = {
      ...ofKind('thread-limits', 'tapped', { thread: '3-4 UNC', class: '2B', hole: '= bore' }),
      outputs: { over_class: { limits: LIMITS } },
    };
    expect(inches([bore, own]).output('tapped', 'over_class').check.asNew.state).toBe('proven in limits');
  });

  test.each([['4'], ['= (cut - 2 in) / .0001 in'], ['= 2 * 2']])(
    'divisions of a dial are read where they are typed: %s',
    (divisions) => {
      const set = {
        ...ofKind('gauge-setting', 'dial', {
          set_to: '2.0000 in',
          divisions,
          division: '.0001 in',
          gauge: 'g',
        }),
        outputs: { size: { limits: { lower: '1.9 in', upper: '2.1 in' } } },
      };
      const gauge = ofKind('gauge', 'g', { gauge: 'micrometer-25-50-mm', certificate: '.0001 in' });
      const state = inches([plain('cut', 'chosen', '2.0004 in'), gauge, set]).output('dial', 'size').check
        .asNew.state;
      expect(state).toBe(divisions === '4' ? 'proven in limits' : 'holds');
    },
  );

  test('by a setting ring: what is read from it is measured', () => {
    const set = {
      ...ofKind('gauge-setting', 'dial', {
        set_to: '2.0000 in',
        divisions: '4',
        division: '.0001 in',
        gauge: 'g',
      }),
      outputs: { size: { limits: { lower: '1.9 in', upper: '2.1 in' } } },
    };
    const gauge = ofKind('gauge', 'g', { gauge: 'micrometer-25-50-mm', certificate: '.0001 in' });
    expect(inches([gauge, set]).output('dial', 'size').check.asNew.state).toBe('proven in limits');
  });

  test('a model holds by calculation until its figure is measured itself', () => {
    const press = (outputs: NonNullable<CellRecord['outputs']>) =>
      inches([
        plain('bush', 'measured', '2.2515 in ± .0001 in'),
        plain('inside', 'measured', '1.75 in ± .0001 in'),
        ofKind('material', 'bronze', { material: 'c93200' }),
        {
          ...ofKind('bush-close-in', 'p', {
            bush_outside: 'bush',
            bush_bore: 'inside',
            interference: '= bush - inside - .5 in',
            bush_material: 'bronze',
            housing_material: 'bronze',
          }),
          outputs,
        },
      ]).output('p', 'close_in').check.asNew.state;
    const limits = { lower: '-1 in', upper: '1 in' };
    expect(press({ close_in: { limits } })).toMatch(/^holds by calculation/);
    expect(press({ close_in: { limits, measured: { entry: '.0011 in ± .0001 in' } } })).toMatch(
      /^proven in limits/,
    );
  });
});

test('a reading brought to reference temperature stays a reading', () => {
  const sheet = inches([
    ofKind('material', 'iron', { material: 'c93200' }),
    plain('a', 'measured', '2 in ± .0001 in', { at: '75 degF ± 1 degF', material: 'iron', limits: LIMITS }),
  ]);
  expect(sheet.output('a').check.asNew.state).toBe('proven in limits');
});

describe('a size worked back to 20 degC from a reading of a warm part', () => {
  const stateOfWarm = (output: string, inputs: Record<string, string>, others: CellRecord[] = []) =>
    inches([
      ofKind('material', 'iron', { material: 'c93200' }),
      ...others,
      {
        ...ofKind('part-temperature', 'warm', {
          reading: '2 in ± .0001 in',
          part_temperature: '30 degC ± 1 K',
          gauge_temperature: '21 degC ± 1 K',
          ...inputs,
        }),
        outputs: { [output]: { limits: { lower: '-9 in', upper: '9 in' } } },
      },
    ]).output('warm', output).check.asNew.state;
  const model = [plain('growth', 'worked', '= iron.alpha * 1.05', { quantity: 'expansion coefficient' })];

  test('is a reading by a coefficient that stands in print', () => {
    expect(stateOfWarm('at_20', { part_expansion: '18e-6 1/K ± 1e-6 1/K' })).toBe('proven in limits');
  });

  test.each([['= iron.alpha'], ['= growth']])(
    'by one that a model gives, %s, it holds by calculation',
    (part_expansion) => {
      expect(stateOfWarm('at_20', { part_expansion }, model)).toMatch(/^holds by calculation/);
    },
  );

  test.each([['part_growth'], ['gauge_growth'], ['per_kelvin']])(
    'what is to grow is no more than calculated: %s',
    (output) => {
      expect(stateOfWarm(output, { part_expansion: '18e-6 1/K ± 1e-6 1/K' })).toMatch(
        /^holds by calculation/,
      );
    },
  );
});

test('the mark of the author is followed at once, below too', () => {
  const cells = (more: Partial<CellRecord>) => [
    bore,
    plain('a', 'worked', '= bore * 0.5', more),
    plain('b', 'worked', '= a', { limits: LIMITS }),
  ];
  expect(inches(cells({})).output('b').check.asNew.state).toBe('holds by calculation');
  expect(inches(cells({ basis: 'geometry' })).output('b').check.asNew.state).toBe('proven in limits');
});

describe('a size that came out beyond its own tolerance says so', () => {
  const remarks = (measured: string, role: CellRecord['role'] = 'chosen', entry = '2.0000 in') =>
    inches([plain('a', role, entry, { tolerance: '+.0010 -.0005 in', measured: { entry: measured } })])
      .byName('a')
      ?.remarks.map(({ message }) => message.replaceAll('\u00a0', ' '));
  test.each([
    ['2.0012 in ± .0001 in', 'Came out 0.0002 in above its own tolerance.'],
    ['1.9990 in ± .0001 in', 'Came out 0.0005 in below its own tolerance.'],
  ])('%s', (measured, said) => expect(remarks(measured)).toEqual([said]));

  test('of a size worked out too', () => {
    expect(remarks('2.0012 in ± .0001 in', 'worked', '= 1 in + 1 in')).toEqual([
      'Came out 0.0002 in above its own tolerance.',
    ]);
  });

  test('and on its limits or within them it says nothing', () => {
    expect(remarks('2.0010 in ± .0001 in')).toEqual([]);
    expect(remarks('1.9995 in ± .0001 in')).toEqual([]);
  });
});
