import { expect, test } from 'vitest';
import type { CellRecord } from '../../shared/sheet/format.ts';
import { stopsOf } from '../../src/page/bench/stops.ts';
import { waysOf, wayTaken } from '../../src/page/bench/ways.ts';
import type { Sheet } from '../../src/page/state/sheet.ts';

const LIMITS = { lower: '0.001 in', upper: '0.003 in' };

const record = (id: string, more: Partial<CellRecord>): CellRecord => ({
  id,
  role: 'worked',
  label: id,
  quantity: 'length',
  ...more,
});

/** A sheet as far as the bench reads it: records, planned values in metres, what each line depends on. */
const sheetOf = (
  records: CellRecord[],
  values: Record<string, number>,
  feeds: Record<string, string[]> = {},
): Sheet =>
  ({
    state: { order: records.map(({ id }) => id) },
    titleOf: (id: string) => id,
    line: (id: string) => ({
      record: records.find((one) => one.id === id),
      result: {
        outputs: id in values ? { value: { planned: { value: values[id] } } } : {},
        feeds: feeds[id] ?? [],
      },
    }),
  }) as unknown as Sheet;

test('readings, sizes to cut and sizes that come of pressing are read; what is only a difference is not', () => {
  const records = [
    record('journal', { role: 'measured' }),
    record('maker', { role: 'given', entry: '2 thou' }),
    record('interference', { role: 'chosen', entry: '1 thou' }),
    record('bore', { role: 'chosen', tolerance: '± 0.0005 in' }),
    record('pressed', { limits: LIMITS }),
    record('clearance', { limits: LIMITS }),
    record('shown_small', { limits: LIMITS, display: 'thou' }),
    record('float', { limits: LIMITS, display: 'thou', measured: { entry: '6 thou' } }),
    record('close', { role: 'cell', kind: 'x', outputs: { wall: { limits: LIMITS } } }),
  ];
  const sheet = sheetOf(
    records,
    { journal: 0.0444, bore: 0.0445, pressed: 0.0442, clearance: 0.00005 },
    { pressed: ['bore'], clearance: ['bore', 'journal'] },
  );
  expect(stopsOf(sheet).map(({ cell }) => cell)).toEqual(['journal', 'bore', 'pressed', 'float']);
});

test('of two ways to one end, the one something was read of is the one that is gone', () => {
  const cut = { role: 'chosen', tolerance: '± 0.0005 in' } as const;
  const records = [
    record('bore', { ...cut }),
    record('First way: cut to', { ...cut }),
    record('Second way', { role: 'section' }),
    record('sleeve', { ...cut, measured: { entry: '2 in' } }),
  ];
  const sheet = sheetOf(records, {});
  const ways = waysOf(sheet);
  expect([...ways]).toEqual([
    ['First way: cut to', 'the first way'],
    ['Second way', 'the second way'],
    ['sleeve', 'the second way'],
  ]);
  expect(wayTaken(stopsOf(sheet), ways)).toBe('the second way');
  expect(wayTaken(stopsOf(sheetOf(records.slice(0, 3), {})), ways)).toBeUndefined();
  // However it is counted, a way is the same way; said in the middle of a label it is none.
  const counted = [
    '1st way: bond',
    'The first way, cured',
    'way b: sleeve',
    'Bored halfway: cut to',
    'By way of trial',
  ];
  expect([
    ...waysOf(
      sheetOf(
        counted.map((id) => record(id, {})),
        {},
      ),
    ),
  ]).toEqual([
    ['1st way: bond', 'the first way'],
    ['The first way, cured', 'the first way'],
    ['way b: sleeve', 'way B'],
  ]);
  // A line that is called the first way, where there is no other, is a line like any.
  expect(waysOf(sheetOf(records.slice(0, 2), {})).size).toBe(0);
});
