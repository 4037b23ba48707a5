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
