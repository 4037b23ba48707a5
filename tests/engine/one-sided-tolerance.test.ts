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
  expect(found?.check.asNew.state).toBe('holds');
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

const bored: CellRecord = { id: 'd', role: 'given', name: 'bored', quantity: 'length', entry: '50 mm H7' };
const turned: CellRecord = { id: 'e', role: 'given', name: 'turned', quantity: 'length', entry: '50 mm p6' };

// H7 and p6 at 50 mm are +25 0 and +42 +26 um (ISO 286-2:2010): 1 to 42 um of interference, 21.5 at the centres.
it('the bare figure is judged by the centre of the spread, not by nominals at the end of their limits', () => {
  const grip: CellRecord = {
    id: 'f',
    role: 'worked',
    name: 'grip',
    entry: '=turned - bored',
    limits: { lower: '0.021 mm', upper: '0.022 mm', rule: 'simple' },
  };
  const found = computeSheet(sheet(bored, turned, grip), library).byName('grip')?.outputs.value;
  expect(found?.planned?.centre).toBeCloseTo(0.0000215, 12);
  expect(found?.planned?.low).toBeCloseTo(0.000001, 12);
  expect(found?.planned?.high).toBeCloseTo(0.000042, 12);
  expect(found?.check.asNew.state).toContain('holds');
});

it('a branch is taken, and a row looked up, at a size within the limits', () => {
  const branch: CellRecord = {
    id: 'g',
    role: 'worked',
    name: 'branch',
    entry: '=IF(turned > 50 mm; 1 mm; 2 mm)',
  };
  const cut: CellRecord = {
    ...turned,
    id: 'h',
    name: 'cut',
    role: 'chosen',
    entry: '=49 mm + 1 mm',
    tolerance: 'p6',
  };
  const after: CellRecord = { ...branch, id: 'i', name: 'after', entry: '=IF(cut > 50 mm; 1 mm; 2 mm)' };
  const found = computeSheet(sheet(turned, branch, cut, after), library);
  expect(found.byName('branch')?.outputs.value?.planned).toMatchObject({
    value: 0.001,
    low: 0.001,
    high: 0.001,
  });
  expect(found.byName('after')?.outputs.value?.planned).toMatchObject({
    value: 0.001,
    low: 0.001,
    high: 0.001,
  });
  expect(found.byName('cut')?.outputs.value?.planned?.low).toBeCloseTo(0.050026, 12);
  expect(found.byName('cut')?.outputs.value?.planned?.high).toBeCloseTo(0.050042, 12);
});

it('an interference fit of such sizes does not say that it is loose', () => {
  const press: CellRecord = {
    id: 'p',
    role: 'cell',
    name: 'press',
    kind: 'interference-fit',
    inputs: { contact_diameter: '=bored', interference: '=turned - bored' },
  };
  const found = computeSheet(sheet(bored, turned, press), library).byName('press');
  const said = [...(found?.remarks ?? []), ...(found?.problems ?? [])]
    .map(({ message }) => message)
    .join('\n');
  expect(said).not.toMatch(/loose/);
});
