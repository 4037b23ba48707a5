import { expect, it } from 'vitest';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { SheetDocument } from '../../src/document/sheet-document.ts';
import { commitText, prepareText } from '../../src/page/entry/commit.ts';
import type { EntrySpot } from '../../src/page/entry/spot.ts';
import type { Sheet } from '../../src/page/state/sheet.ts';

const file: SheetFile = {
  format: 'fitwright-sheet',
  version: 1,
  title: { title: 'typed' },
  units: { length: 'in' },
  rule: 'worst-case',
  cells: [
    { id: 'a', role: 'given', name: 'journal', quantity: 'length', entry: '1.75 in' },
    { id: 'b', role: 'chosen', name: 'bore', quantity: 'length', limits: { lower: '1.7 in' } },
    { id: 'c', role: 'cell', name: 'press', kind: 'bush-press', inputs: { housing: 'bore' } },
  ],
};

const spots: [EntrySpot, string][] = [
  [{ cell: 'a', field: 'entry', kind: 'entry', quantity: 'length' }, '1.7512'],
  [{ cell: 'b', field: 'entry', kind: 'entry', quantity: 'length' }, '=journal + .003 in'],
  [{ cell: 'b', field: 'measured.entry', kind: 'entry', quantity: 'length' }, '1.7543; 1.7544'],
  [{ cell: 'b', field: 'limits.lower', kind: 'entry', quantity: 'length' }, '=journal'],
  [{ cell: 'c', field: 'inputs.housing', kind: 'entry', quantity: 'length' }, '=journal'],
];

it.each(spots)('prepares the very record that taking the text makes: %o', (spot, text) => {
  const document = SheetDocument.fromFile(file);
  let prepared: CellRecord | undefined;
  const sheet = {
    document,
    state: { units: document.units() },
    line: (id: string) => ({ record: structuredClone(document.cell(id)) }),
    titleOf: (id: string) => id,
    engine: {
      prepare: (record: CellRecord) => {
        prepared = record;
      },
    },
  } as unknown as Sheet;
  prepareText(sheet, spot, text);
  commitText(sheet, spot, text);
  expect(prepared).toEqual(document.cell(spot.cell));
  document.destroy();
});
