import { expect, it, test } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { computeSheet } from '../../../src/engine/compute.ts';
import { sheetOf } from '../random-sheet.ts';

const asked = (entry: string, unit: 'in' | 'mm', more: Partial<CellRecord> = {}) => {
  const cell = { id: 'size', role: 'measured', name: 'size', quantity: 'length', entry, ...more };
  const sheet = { ...sheetOf([cell as CellRecord]), units: { length: unit } };
  return computeSheet(sheet, library).cells[0]?.slips ?? [];
};
const plan = (entry: string, tolerance: string, read: string, unit: 'in' | 'mm') =>
  asked(entry, unit, { role: 'chosen', tolerance, measured: { entry: read } });

test.each([
  ['85.011; 85.01; 5.008; 85.009 mm', '85.011; 85.01; 85.008; 85.009 mm'],
  ['33168; 3.3169 in', '3.3168; 3.3169 in'],
  ['2.2484; 2.2485; 2.2985; 2.2486 in', '2.2484; 2.2485; 2.2485; 2.2486 in'],
  ['2.2484; 2.2485; 2.3485; 2.2486 in', '2.2484; 2.2485; 2.2485; 2.2486 in'],
])('%s is asked about, and the odd one is put right', (entry, offer) => {
  const [one, ...more] = asked(entry, entry.endsWith('in') ? 'in' : 'mm');
  expect(one?.offer).toBe(offer);
  expect(one?.cost).toBeGreaterThan(0);
  expect(more).toEqual([]);
});

it('asks about a size that is nowhere near its plan', () => {
  expect(plan('2.1760 in', '± 0.0005 in', '2.1757 | 2.1758 | 2.2263 in', 'in')).toHaveLength(1);
  expect(plan('173.962 mm', '± 0.1 mm', '74.00 mm', 'mm')).toHaveLength(1);
});

it('asks about a reading that no slip explains, with what it costs, and offers nothing', () => {
  const [one] = asked('62.110; 62.112; 71.337; 62.111 mm', 'mm', { limits: {} });
  expect(one?.key).toBe('apart:entry#3');
  expect(one?.offer).toBeUndefined();
  expect(one?.message).toMatch(/It moves the mean by 2\.30[67] mm\./);
});

test.each([{ lower: '2.1000 in' }, { upper: '9.0000 in' }, { wear: '2.2000 in' }])(
  'one limit alone says nothing of how large a size is: %j',
  (limits) => {
    expect(asked('2.2484; 2.2485 | 2.2486; 2.2484 in', 'in', { limits })).toEqual([]);
  },
);

test.each([
  ['20 thou over', 'undersize', '20 thou under'],
  ['20 thou under', 'piston, oversize', '20 thou over'],
])('%s stands against its label, %s', (entry, label, offer) => {
  expect(asked(entry, 'in', { role: 'chosen', label }).map((one) => one.offer)).toEqual([offer]);
});

test.each([
  ['interference', '-0.0015 in', '0.0015 in'],
  ['squeeze', '-.0012 in', '0.0012 in'],
])('%s of %s is asked about on its own line', (name, entry, offer) => {
  const [one, ...more] = asked(entry, 'in', { role: 'chosen', name });
  expect(one?.offer).toBe(offer);
  expect(more).toEqual([]);
});

const pressed = (tolerance: string, entry = '= sleeve - housing', sleeve = '2.2515 in') => {
  const cells = [
    { id: 'housing', role: 'measured', name: 'housing', label: 'housing bore', entry: '2.2500; 2.2501 in' },
    { id: 'sleeve', role: 'chosen', name: 'sleeve', label: 'sleeve outside', entry: sleeve, tolerance },
    {
      id: 'squeeze',
      role: 'worked',
      name: 'squeeze',
      entry,
      limits: { lower: '0.0005 in', upper: '0.0025 in' },
    },
  ].map((one) => ({ quantity: 'length', ...one }) as CellRecord);
  if (entry.startsWith('= housing')) delete cells[2]?.limits;
  const results = computeSheet({ ...sheetOf(cells), units: { length: 'in' as const } }, library).cells;
  return Object.fromEntries(results.map(({ id, slips }) => [id, slips]));
};

test.each([
  ['± 0.0050 in', '± 0.00050 in'],
  ['± 0.00002 in', '± 0.0002 in'],
])('a tolerance of %s is asked about', (tolerance, offer) => {
  expect(pressed(tolerance).sleeve?.map((one) => one.offer)).toEqual([offer]);
});

it('asks about no tolerance that a fit leaves room for', () => {
  expect(pressed('± 0.0003 in').sleeve).toEqual([]);
  expect(pressed('± 0.0010 in').sleeve).toEqual([]);
});

it('asks about an interference taken the wrong way round', () => {
  const { squeeze } = pressed('± 0.0003 in', '= housing - sleeve');
  expect(squeeze?.map(({ message }) => message)).toEqual([expect.stringContaining('wrong way round')]);
});

it('asks about the one of a set that is out of line with the others', () => {
  const pins = ['2.2484 in', '2.2486 in', '2.2736 in', '2.2485 in'].map(
    (entry, i) =>
      ({ id: `p${i}`, role: 'measured', name: `pin_${i + 1}`, quantity: 'length', entry }) as CellRecord,
  );
  const results = computeSheet({ ...sheetOf(pins), units: { length: 'in' as const } }, library).cells;
  expect(results.map(({ slips }) => slips[0]?.key)).toEqual([undefined, undefined, 'turn:entry', undefined]);
  expect(results[2]?.slips[0]?.offer).toBe('2.2486 in');
});

it('asks about the sign of a count in a cell of its own', () => {
  const cells = [
    {
      id: 'bore',
      role: 'cell',
      kind: 'gauge-setting',
      edition: 1,
      name: 'hub_bore',
      inputs: { set_to: '2.2500 in', divisions: '-14', division: '0.0001 in' },
      outputs: { size: { limits: { lower: '2.2510 in', upper: '2.2518 in' } } },
    } as unknown as CellRecord,
  ];
  const [one] =
    computeSheet({ ...sheetOf(cells), units: { length: 'in' as const } }, library).cells[0]?.slips ?? [];
  expect(one?.key).toBe('mirrored:inputs.divisions');
  expect(one?.offer).toBe('+14');
});

test.each([
  ['28.98; 28.87; 28.97; 28.98 mm', 'turn:entry#2'],
  // Read to half divisions: nothing in it is odd, and a reading between them would be.
  ['50.765; 50.765; 50.775; 50.775 | 50.770; 50.770; 50.785; 50.780 mm', undefined],
  // A last nought left out is no digit that is missing.
  ['140.86; 140.9 | 140.86; 140.85 | 140.88; 140.87 | 140.87; 140.86 mm', undefined],
  // A last figure of nought or five is nothing odd among others.
  ['23.380 | 23.388 | 23.387 | 23.386 mm', undefined],
])('of %s it asks about %s', (entry, key) => {
  expect(asked(entry, 'mm')[0]?.key).toBe(key);
});

it('names the line that a list was copied from, and offers nothing', () => {
  const cells = [
    { id: 'a', name: 'pump_journal', entry: '38.412; 38.410 | 38.409; 38.411 mm' },
    {
      id: 'b',
      name: 'arbor_journal',
      entry: '38.412; 38.410 | 38.409; 38.411 mm',
      limits: { lower: '44.980 mm', upper: '45.000 mm' },
    },
  ].map((one) => ({ role: 'measured', quantity: 'length', ...one }) as CellRecord);
  const results = computeSheet({ ...sheetOf(cells), units: { length: 'mm' as const } }, library).cells;
  expect(results.map(({ slips }) => slips.map(({ key, offer }) => [key, offer]))).toEqual([
    [],
    [['copied:entry', undefined]],
  ]);
  expect(results[1]?.slips[0]?.message).toMatch(/`pump_journal`. Is it copied/);
});

const lines = (name: string, entries: readonly string[]) =>
  computeSheet(
    {
      ...sheetOf(
        entries.map(
          (entry, i) =>
            ({
              id: `n${i}`,
              role: 'measured',
              name: `${name}_${i + 1}`,
              quantity: 'length',
              entry,
            }) as CellRecord,
        ),
      ),
      units: { length: 'in' as const },
    },
    library,
  ).cells.map(({ slips }) => slips.map(({ key }) => key.split(':')[0]));

it('sees by the lines like it that a digit was left out', () => {
  const of = lines('crank_pin', ['5.6207 in', '5.6198 in', '5.628 in', '5.6203 in', '5.6203 in']);
  expect(of).toEqual([[], [], ['missing-digit'], [], []]);
});

test.each(['24.645 | 24.556 | 24.527 | 24.555 | 24.648 mm', '0.5430 | 0.5412 | 0.5430 in'])(
  'a worn form, read once at each place, is nothing odd: %s',
  (entry) => expect(asked(entry, entry.endsWith('in') ? 'in' : 'mm')).toEqual([]),
);

it('asks about even readings far beyond their limits, and not about uneven ones', () => {
  const limits = { lower: '59.980 mm', upper: '60.000 mm', metalOn: 'high' as const };
  const [one] = asked('59.489; 59.490; 59.489 | 59.490; 59.491; 59.489 mm', 'mm', { limits });
  expect(one?.key).toBe('turn:entry');
  expect(asked('59.489; 59.540; 59.495 | 59.440; 59.491; 59.450 mm', 'mm', { limits })).toEqual([]);
});

// A figure of the scale misread by 0.1 mm leaves the figures behind it as they are: no list read to tenths.
test.each(['16.60 | 16.50 | 16.60 mm', '40.20 | 40.00 | 40.00 mm', '27.17 | 27.15 | 27.46 mm'])(
  'one place of %s stands apart',
  (entry) => {
    const [one, ...more] = asked(entry, 'mm');
    expect(one?.cost).toBeGreaterThan(0);
    expect(more).toEqual([]);
  },
);

it('asks about a length beyond any part, and makes nothing of a nought', () => {
  expect(asked('23312 in', 'in')[0]?.key).toBe('missing-point:entry');
  expect(asked('0; 1.0011; 1.0012 in', 'in')[0]).toMatchObject({ key: 'apart:entry#1' });
});

// H7 and h7 of 63 mm: 30 um up or down (ISO 286-1).
test.each([
  ['63 mm', 'a piston', { role: 'chosen', tolerance: 'H7' }, 30e-6],
  ['0.5 mm over', 'a journal', { role: 'given' }, 1e-3],
  ['1.5 mm', 'a washer', { role: 'chosen', tolerance: '± 0.000001 mm' }, 18e-9],
] as const)('%s of %s: the question says what it costs', (entry, label, more, cost) => {
  const [one] = asked(entry, 'mm', { label, ...more });
  expect(one?.offer).toBeDefined();
  expect(one?.cost).toBeCloseTo(cost, 9);
});

// Out by less than half of what its limits leave, a part is out, and its count is no slip; far beyond them it is asked about.
test.each([
  ['17', 0],
  ['71', 1],
  ['-20', 1],
])('a count of %s divisions from a setting', (divisions, questions) => {
  const limits = { lower: '1.2947 in', upper: '1.3007 in' };
  const inputs = { set_to: '1.277 in', divisions, division: '0.001 in' };
  const cell = { id: 'dial', role: 'cell', kind: 'gauge-setting', edition: 1, name: 'bore', inputs };
  const sheet = sheetOf([{ ...cell, outputs: { size: { limits } } } as CellRecord]);
  expect(computeSheet({ ...sheet, units: { length: 'in' } }, library).cells[0]?.slips).toHaveLength(
    questions,
  );
});

test.each([
  ['dial', '7', []],
  ['dial', '17', []],
  // Out of its limits by more than they are wide, on either side, and not moved at all.
  ['dial', '27', ['apart']],
  ['dial', '-30', ['apart']],
  ['dial', '0', ['apart']],
  // Wear opens a bore and closes none.
  ['hub_bore', '27', []],
  ['hub_bore', '0', ['apart']],
  ['hub_bore', '40', ['wrong-digit']],
  ['journal', '27', ['apart']],
])('of %s a count of %s divisions is told by its limits', (name, divisions, asks) => {
  const cell = {
    id: 'dial',
    role: 'cell',
    kind: 'gauge-setting',
    edition: 1,
    name,
    inputs: { set_to: '25.000 mm', divisions, division: '0.001 mm' },
    outputs: { size: { limits: { lower: '25.008 mm', upper: '25.015 mm' } } },
  } as CellRecord;
  const slips = computeSheet({ ...sheetOf([cell]), units: { length: 'mm' } }, library).cells[0]?.slips;
  expect(slips?.map(({ key }) => key.split(':')[0])).toEqual(asks);
});

it('takes a bare 0 to be as fine as the readings beside it', () => {
  expect(asked('0; 0; 0.02 mm', 'mm', { label: 'runout' })).toEqual([]);
});

it('takes the same figure over and over for no reading to five steps', () => {
  const limits = { lower: '16.201 mm', upper: '16.209 mm' };
  expect(asked('16.30; 16.30; 16.30 mm', 'mm', { name: 'pin', limits })).toHaveLength(1);
});

it('makes no set of lines that are called by letters or numbers alone', () => {
  for (const names of [
    ['a', 'b', 'c', 'd'],
    ['d1', 'd2', 'd3', 'd4'],
  ]) {
    const entries = ['25.010 mm', '25.012 mm', '25.011 mm', '31.754 mm'];
    const lines = names.map((name, i) => ({
      id: name,
      role: 'measured' as const,
      name,
      quantity: 'length',
      entry: entries[i] as string,
    }));
    const { cells } = computeSheet({ ...sheetOf(lines), units: { length: 'mm' } }, library);
    expect(cells.flatMap(({ slips }) => slips)).toEqual([]);
  }
});

it('knows limits no better than they are written', () => {
  const cell = {
    id: 'dial',
    role: 'cell',
    kind: 'gauge-setting',
    edition: 1,
    name: 'dial',
    inputs: { set_to: '0.40934 in', divisions: '-3', division: '0.00001 in' },
    outputs: { size: { limits: { lower: '0.4094 in', upper: '0.4094 in' } } },
  } as CellRecord;
  const slips = computeSheet({ ...sheetOf([cell]), units: { length: 'in' } }, library).cells[0]?.slips;
  expect(slips).toEqual([]);
});
