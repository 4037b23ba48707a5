import { expect, it } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import { computeSheet } from '../../src/engine/compute.ts';
import { plain } from './closed-form.ts';
import { sheetOf } from './random-sheet.ts';

const remarks = (size: string): string[] => {
  const cells = [plain('size', 'given', size), plain('left', 'worked', '= IF(size > 2 in; size; 1 in)')];
  const { cells: results } = computeSheet({ ...sheetOf(cells), units: { length: 'in' } }, library);
  return results.find(({ id }) => id === cells[1]!.id)!.remarks.map(({ message }) => message);
};

it('a branch within the spread is told of a figure there is, not of one that waits for its entries', () => {
  expect(remarks('2.0001 in ± 0.001 in')).toEqual([expect.stringMatching(/^A branch or a step/)]);
  expect(remarks('2.1 in ± 0.001 in')).toEqual([]);
  expect(remarks('')).toEqual([]);
});
