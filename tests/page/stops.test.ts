import { expect, test } from 'vitest';
import type { CellRecord } from '../../shared/sheet/format.ts';
import { stopsOf } from '../../src/page/bench/stops.ts';
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
    // Its tolerance may stand in the entry, and so may its class.
    record('bush_bore', { role: 'chosen', entry: '1.2517±.0002' }),
    record('seat', { role: 'chosen', entry: '50 mm h6' }),
    record('from_bore', { role: 'chosen', entry: '= bore - 2 thou' }),
    record('wanted', { role: 'chosen', entry: '1.3 ± 0.2 thou', display: 'thou' }),
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
  expect(stopsOf(sheet).map(({ cell }) => cell)).toEqual([
    'journal',
    'bore',
    'bush_bore',
    'seat',
    'pressed',
    'float',
  ]);
});
