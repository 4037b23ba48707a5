import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { computeSheet } from '../../src/engine/compute.ts';
import { Engine } from '../../src/engine/engine.ts';
import type { CellResult } from '../../src/engine/rows/results.ts';
import { settingsOf } from '../../src/engine/rows/whole-sheet.ts';

const SEED = 20261130;

const fileOf = (cells: CellRecord[]): SheetFile => ({
  format: 'fitwright-sheet',
  version: 2,
  title: { title: 'Countershaft of the shingle mill' },
  units: { length: 'in' },
  rule: 'worst-case',
  cells,
});

/** A worn journal, a bore that was opened, a bush pressed in: readings, limits, a library cell, what was measured of it. */
const job = (id: (plain: string) => string): CellRecord[] => [
  { id: id('m'), role: 'cell', kind: 'material', name: 'bronze', inputs: { material: 'C93200' } },
  { id: id('g'), role: 'cell', kind: 'gauge', name: 'mic', inputs: { gauge: 'micrometer-2-3-in' } },
  {
    id: id('j'),
    role: 'measured',
    name: 'journal',
    entry: '2.2480 in; 2.2484 in; 2.2482 in ± 0.0001 in',
    limits: { lower: '2.2490 in', upper: '2.2500 in' },
  },
  { id: id('b'), role: 'measured', name: 'bore', entry: '2.5010 in; 2.5012 in', gauge: 'mic' },
  {
    id: id('c'),
    role: 'worked',
    name: 'clearance',
    entry: '= bore - journal.least',
    limits: { lower: '0.2 in', upper: '0.3 in' },
    measured: { entry: '0.2530 in ± 0.0002 in' },
  },
  {
    id: id('o'),
    role: 'chosen',
    name: 'bush_outside',
    entry: '= bore + 0.002 in',
    tolerance: '± 0.0005 in',
    issued: '2.5031 in',
  },
  {
    id: id('p'),
    role: 'cell',
    kind: 'bush-close-in',
    name: 'press',
    inputs: {
      bush_outside: '= bush_outside',
      bush_bore: '2.2520 in',
      interference: '0.002 in ± 0.0002 in',
      bush_material: 'bronze',
      housing_material: 'bronze',
      housing_outside: '3.5 in',
    },
  },
];

/** What is shown of a cell, whatever it is called inside; sums come in the order of the ids, so to eight figures. */
const told = ({ outputs, problems, remarks, slips }: CellResult): string =>
  JSON.stringify({ outputs, problems, remarks, slips }, (key, value) =>
    key === 'originId' ? undefined : typeof value === 'number' ? Number(value.toPrecision(8)) : value,
  );

const parts = [
  '/',
  '%',
  '.',
  '!',
  '~',
  '@',
  '>',
  '?',
  '#',
  '{',
  ' ',
  '"',
  '\\',
  '\u0000',
  '\u0001',
  '\u0002',
  '\ud800',
];
const words = [
  'least',
  'greatest',
  'measured',
  'in.',
  'out.',
  'read',
  'validity',
  'constructor',
  '__proto__',
  '2f',
  '25',
  'a',
];
const hostile = fc
  .array(fc.constantFrom(...parts, ...words), { minLength: 1, maxLength: 5 })
  .map((some) => some.join(''));

describe('ids of a file', () => {
  it('are only names: a sheet says the same whatever its lines are called inside', () => {
    const plain = computeSheet(fileOf(job((id) => id)), library).cells.map(told);
    const n = plain.length;
    fc.assert(
      fc.property(fc.uniqueArray(hostile, { minLength: n, maxLength: n }), (ids) => {
        let at = 0;
        const cells = job(() => ids[at++] as string);
        expect(computeSheet(fileOf(cells), library).cells.map(told)).toEqual(plain);
      }),
      { seed: SEED, numRuns: 15 },
    );
  });

  it('reach no other line: one more line by any id changes no verdict', () => {
    const plain = computeSheet(fileOf(job((id) => id)), library).cells.map(told);
    const engine = new Engine(library);
    const bases = ['m', 'g', 'j', 'b', 'c', 'o', 'p'];
    const suffix = fc
      .array(fc.constantFrom(...parts, ...words), { minLength: 1, maxLength: 3 })
      .map((some) => some.join(''));
    engine.load(fileOf(job((id) => id)));
    fc.assert(
      fc.property(fc.constantFrom(...bases), suffix, (base, end) => {
        const extra: CellRecord = { id: base + end, role: 'measured', entry: '2.2495 in ± 0.00001 in' };
        const cells = [extra, ...job((id) => id)];
        const found = computeSheet(fileOf(cells), library).cells.slice(1);
        expect(found.map(told)).toEqual(plain);
        // As an edit, and gone again.
        expect(engine.apply({ changed: [extra] }).cells.map(({ id }) => id)).toEqual([extra.id]);
        expect(engine.apply({ gone: [extra.id] }).cells).toEqual([]);
      }),
      { seed: SEED, numRuns: 15 },
    );
    engine.apply({ settings: settingsOf(fileOf([])) });
  });

  it.each([
    ['j@.least', 'j@.greatest'],
    ['j.least', 'j.greatest'],
    ['j/least', 'j/greatest'],
    ['j%above-lower', 'j%below-upper'],
    ['j/above-lower', 'j/below-upper'],
    ['j!read', 'j.least!read'],
  ])('a bad journal is not proven in by lines called %s and %s', (a, b) => {
    const cells: CellRecord[] = [
      ...job((id) => id),
      { id: a, role: 'given', entry: '2.2495 in' },
      { id: b, role: 'given', entry: '2.2495 in' },
    ];
    for (const order of [cells, cells.toReversed()]) {
      const journal = computeSheet(fileOf(order), library).byName('journal');
      expect(journal?.outputs.value?.check.asNew.state).toBe('out of limits');
    }
  });
});
