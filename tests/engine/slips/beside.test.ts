import { expect, it, test } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { computeSheet } from '../../../src/engine/compute.ts';
import { Engine } from '../../../src/engine/engine.ts';
import { sheetOf } from '../random-sheet.ts';

const line = (name: string, entry: string, more: Partial<CellRecord> = {}): CellRecord =>
  ({ id: name, role: 'measured', name, label: name, quantity: 'length', entry, ...more }) as CellRecord;
const clearance = (name: string, hole: string, shaft: string): CellRecord =>
  line(name, `= ${hole} - ${shaft}`, {
    role: 'worked',
    label: 'running clearance',
    limits: { lower: '0.020 mm', upper: '0.080 mm' },
  });
const sheet = (cells: readonly CellRecord[]) => ({
  ...sheetOf([...cells]),
  units: { length: 'mm' as const },
});
const askedAt = (cells: readonly CellRecord[]): Record<string, string> =>
  Object.fromEntries(
    computeSheet(sheet(cells), library).cells.flatMap(({ id, slips }) =>
      slips.map((one) => [id, one.message] as const),
    ),
  );

const bore = line('bore', '75.023; 75.026; 75.025 mm');
const journal = line('journal', '49.970; 49.971; 49.969 mm');
const fit = clearance('fit', 'bore', 'journal');

it('asks once of two lines that do not go together, and names both', () => {
  const asked = askedAt([bore, journal, fit]);
  expect(Object.keys(asked)).toEqual(['bore']);
  expect(asked.bore).toMatch(/Or is it `journal`\?$/);
});

it('asks about the other one where the first is answered, in an edit as at once', () => {
  const dismissed = [{ slip: 'frame:entry', text: bore.entry as string }];
  const answered = { ...bore, dismissed };
  expect(Object.keys(askedAt([answered, journal, fit]))).toEqual(['journal']);
  const engine = new Engine(library);
  engine.load(sheet([bore, journal, fit]));
  const moved = engine.apply({ changed: [answered] }).cells;
  engine.destroy();
  expect(moved.flatMap(({ id, slips }) => slips.map(() => id))).toEqual(['journal']);
});

test.each([
  ['bore', '75.023; 75.026; 75.025 mm', '49.972; 49.970 mm'],
  ['second', '50.023; 50.026; 50.025 mm', '74.972; 74.970 mm'],
])('of three lines in two fits asks about %s alone, which goes with none', (at, hole, pin) => {
  const cells = [
    line('bore', hole),
    journal,
    line('second', pin),
    fit,
    clearance('other_fit', 'bore', 'second'),
  ];
  const asked = askedAt(cells);
  expect(Object.keys(asked)).toEqual([at]);
});

it('asks at the part that was cut, and names the reading its plan stands on', () => {
  const cells = [
    line('housing', '60.412; 60.413 mm'),
    line('bush_outside', '= housing + 0.040 mm', {
      role: 'chosen',
      tolerance: '± 0.005 mm',
      measured: { entry: '60.953 mm' },
    }),
  ];
  const asked = askedAt(cells);
  expect(Object.keys(asked)).toEqual(['bush_outside']);
  expect(asked.bush_outside).toMatch(/`housing`\?$/);
});
