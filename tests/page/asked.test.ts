import { expect, test } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import type { CellRecord } from '../../shared/sheet/format.ts';
import type { CellResult } from '../../src/engine/rows/results.ts';
import { entriesAsked, nextAsked, nextBehind, waitedFor } from '../../src/page/state/asked.ts';
import { listWords, promptOf } from '../../src/page/state/prompts.ts';
import { inputRow, lineRow } from '../../src/page/state/row-key.ts';

const records: CellRecord[] = [
  { id: 's', role: 'section', label: 'Bore' },
  { id: 'bore', role: 'measured', name: 'bore', example: '2.25 in' },
  { id: 'fitted', role: 'chosen', name: 'fitted', entry: '2.26 in' },
  {
    id: 'close',
    role: 'cell',
    kind: 'bush-close-in',
    inputs: {
      bush_outside: '= fitted',
      bush_bore: '2 in',
      interference: '1 thou',
      bush_material: 'm',
      housing_material: 'm',
    },
    examples: { housing_outside: '3.75 in' },
  },
];

const BORE = lineRow('bore');
const HOUSING = inputRow('close', 'housing_outside');

test('blank lines and inputs that cannot be done without are to be made; what the template left open may be', () => {
  expect(entriesAsked(records, library, new Set())).toEqual({
    must: [BORE],
    may: [HOUSING],
  });
  // Without the library a cell's inputs are not known yet.
  expect(entriesAsked(records, undefined, new Set())).toEqual({ must: [BORE], may: [] });
});

test('an optional input is to be made once figures of other cells wait for its cell', () => {
  const result = {
    id: 'press',
    outputs: { force: { problem: { kind: 'blank', message: '', originId: 'close' } } },
  } as unknown as CellResult;
  expect(entriesAsked(records, library, waitedFor([result])).must).toEqual([BORE, HOUSING]);
  // What is idle for want of it in its own cell is no reason.
  expect(waitedFor([{ ...result, id: 'close' }])).toEqual(new Set());
});

test('the next entry lies further down, and behind the last is the first', () => {
  const order = ['s', 'bore', 'fitted', 'close'];
  const rows = [BORE, HOUSING];
  expect(nextAsked(rows, order, undefined)).toBe(BORE);
  expect(nextAsked(rows, order, BORE)).toBe(HOUSING);
  expect(nextAsked(rows, order, inputRow('close', 'bush_bore'))).toBe(HOUSING);
  expect(nextAsked([BORE], order, lineRow('close'))).toBe(BORE);
  expect(nextAsked([], order, BORE)).toBeUndefined();
  // A blank line of which a limit is blank too leads on, not to itself.
  expect(nextAsked([BORE, BORE, HOUSING], order, BORE)).toBe(HOUSING);
  // Left blank, those of one cell follow each other all the same, and do not lead round in a ring.
  const three = ['bush_outside', 'bush_bore', 'bush_length'].map((name) => inputRow('close', name));
  expect(nextAsked(three, order, three[1])).toBe(three[2]);
  expect(nextBehind(three, order, three[2])).toBeUndefined();
  expect(nextAsked(three, order, three[2])).toBe(three[0]);
});

test('a prompt fits role and quantity, and a list says how it is written', () => {
  expect(promptOf({ role: 'given', quantity: 'power' })).toBe('type the power given');
  expect(promptOf({ role: 'given', quantity: 'length' })).toBe('type the size given');
  expect(promptOf({ role: 'measured', quantity: 'length' })).toBe('type the readings');
  expect(promptOf({ role: 'measured', quantity: 'temperature' })).toBe('type the temperature read');
  expect(promptOf({ role: 'chosen' })).toBe('choose the figure, or type a formula');
  expect(listWords('1.7481; 1.7480 | 1.7481')).toBe(
    '; between readings at one place, | between places along it',
  );
  expect(listWords('1.3 thou')).toBeUndefined();
});

test('a metal that is not chosen yet is to be chosen once other cells wait for it', () => {
  const metal: CellRecord = { id: 'm', role: 'cell', kind: 'material', name: 'm' };
  expect(entriesAsked([metal], library, new Set()).must).toEqual([]);
  expect(entriesAsked([metal], library, new Set(['m'])).must).toEqual([inputRow('m', 'material')]);
  const chosen = { ...metal, inputs: { material: 'c93200' } };
  expect(entriesAsked([chosen], library, new Set(['m'])).must).toEqual([]);
});

test('of several choices of one cell those that its template left open are asked for first', () => {
  const fit: CellRecord = {
    id: 'f',
    role: 'cell',
    kind: 'iso-fit',
    inputs: { nominal: '45 mm' },
    examples: { shaft_class: 'k6' },
  };
  const asked = (inputs: Record<string, string>, examples = fit.examples) =>
    entriesAsked(
      [{ ...fit, inputs: { ...fit.inputs, ...inputs }, examples: examples! }],
      library,
      new Set(['f']),
    ).must;
  expect(asked({})).toEqual([inputRow('f', 'shaft_class')]);
  // Once it is chosen, whoever still waits asks for the other.
  expect(asked({ shaft_class: 'k6' })).toEqual([inputRow('f', 'hole_class')]);
  expect(asked({}, {})).toEqual([inputRow('f', 'hole_class'), inputRow('f', 'shaft_class')]);
});
