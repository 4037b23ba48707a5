import { expect, it, test } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { computeSheet } from '../../../src/engine/compute.ts';
import { sheetOf } from '../random-sheet.ts';

const outputsOf = (entry: string, quantity: string, bore = '40.060; 40.064 | 40.062; 40.066 mm') => {
  const cells = [
    { id: 'bore', role: 'measured', name: 'bore', quantity: 'length', entry: bore },
    {
      id: 'journal',
      role: 'measured',
      name: 'journal',
      quantity: 'length',
      entry: '40.001; 40.003 | 39.999; 40.001 mm',
    },
    { id: 'line', role: 'worked', name: 'line', quantity, entry },
  ] as CellRecord[];
  const results = computeSheet({ ...sheetOf(cells), units: { length: 'mm' as const } }, library).cells;
  const at = (id: string, name: string): number =>
    results.find((one) => one.id === id)?.outputs[name]?.planned?.value ??
    results.find((one) => one.id === id)?.outputs[name]?.measured?.value ??
    Number.NaN;
  return { line: [at('line', 'least'), at('line', 'greatest')], at };
};

// Every formula is worked out here at each pair of ends of the two parts: what is least and greatest of those.
test.each([
  ['= bore - journal', 'length', (b: number, j: number) => b - j],
  ['= ABS(journal - bore)', 'length', (b: number, j: number) => Math.abs(j - b)],
  ['= bore / journal', 'number', (b: number, j: number) => b / j],
  ['= (bore - 40 mm) / journal', 'number', (b: number, j: number) => (b - 0.04) / j],
  ['= (40.06 mm - bore) / journal', 'number', (b: number, j: number) => (0.04006 - b) / j],
  ['= bore ^ 2', 'area', (b: number) => b ** 2],
  ['= bore * journal', 'area', (b: number, j: number) => b * j],
  ['= SQRT(bore ^ 2)', 'length', (b: number) => b],
] as const)('%s has its least and greatest where the forms of its parts allow', (entry, quantity, of) => {
  const { line, at } = outputsOf(entry, quantity);
  const corners = ['least', 'greatest'].flatMap((b) =>
    ['least', 'greatest'].map((j) => of(at('bore', b), at('journal', j))),
  );
  expect(line[0]).toBeCloseTo(Math.min(...corners), 12);
  expect(line[1]).toBeCloseTo(Math.max(...corners), 12);
});

it('has no least size without a sign below nothing', () => {
  const { line } = outputsOf('= ABS(bore - journal)', 'length', '39.990; 40.010 | 40.000; 40.002 mm');
  expect(line[0]).toBe(0);
});

it('takes a part that stands on both sides at no two ends at once', () => {
  const { line } = outputsOf('= (bore - journal) / bore', 'number');
  expect(line).toEqual([Number.NaN, Number.NaN]);
});
