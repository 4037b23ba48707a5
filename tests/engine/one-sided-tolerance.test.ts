import { expect, it } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { computeSheet } from '../../src/engine/compute.ts';

const sheet = (...cells: CellRecord[]): SheetFile => ({
  format: 'fitwright-sheet',
  version: 2,
  title: { title: 'Seat' },
  units: { length: 'mm' },
  rule: 'worst-case',
  cells,
});

const seat: CellRecord = {
  id: 'a',
  role: 'chosen',
  name: 'seat',
  quantity: 'length',
  entry: '50 mm',
  tolerance: 'k6',
  limits: { lower: '50.002 mm', upper: '50.018 mm', metalOn: 'high' },
};
const bore: CellRecord = {
  id: 'b',
  role: 'chosen',
  name: 'bore',
  quantity: 'length',
  entry: '50 mm',
  tolerance: '-0.004 -0.012 mm',
};

// 50 k6 is +18 +2 um in ISO 286-2:2010: the nominal itself lies outside the tolerance and is never cut.
it('a tolerance on one side of its nominal: the worst case is that of the tolerance, not of the nominal', () => {
  const found = computeSheet(sheet(seat), library).byName('seat')?.outputs.value;
  expect(found?.planned?.low).toBeCloseTo(0.050002, 12);
  expect(found?.planned?.high).toBeCloseTo(0.050018, 12);
  expect(found?.check.asNew.state).toBe('holds, near the edge');
});

it('the same where several such sizes meet: brute force over the four corners', () => {
  const tightness: CellRecord = {
    id: 'c',
    role: 'worked',
    name: 'tightness',
    entry: '=(seat - bore) * seat / bore',
  };
  const found = computeSheet(sheet(seat, bore, tightness), library).byName('tightness')?.outputs.value;
  const corners = [0.050002, 0.050018].flatMap((s) => [0.049988, 0.049996].map((b) => ((s - b) * s) / b));
  expect(found?.planned?.low).toBeCloseTo(Math.min(...corners), 12);
  expect(found?.planned?.high).toBeCloseTo(Math.max(...corners), 12);
});
