import { afterAll, beforeAll, expect, it } from 'vitest';
import { CELL_FIELDS } from '../../../shared/sheet/cell-fields.ts';
import type { Field, Part } from '../../../shared/sheet/field.ts';
import { cellValueWords, fieldWords, sheetFieldWords } from '../../../shared/sheet/field-words.ts';
import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import { readSheet } from '../../../shared/sheet/read.ts';
import { TITLE_FIELDS } from '../../../shared/sheet/sheet-fields.ts';
import { writeSheet } from '../../../shared/sheet/write.ts';
import { differences } from '../../../src/document/differences.ts';
import { settledTexts } from '../../../src/document/sharing/own-units.ts';
import { newsOf } from '../../../src/document/sharing/template-news.ts';
import { SheetDocument } from '../../../src/document/sheet-document.ts';
import { templateOf } from '../../../src/document/template.ts';
import { NO_HANDBOOK } from '../../../src/language/parse.ts';
import { paperNotes } from '../../../src/page/print/paper-notes.ts';
import { titleBoxes } from '../../../src/page/state/title-boxes.ts';
import { printOf as fingerprint } from '../../document/prints.ts';
import { bushJob } from '../../document/sample.ts';

/** Fields that no other file of the program names. */
const depth: Field = {
  label: 'depth of case',
  schema: { description: 'How deep the case of a hardened part goes.', type: 'string' },
  computed: true,
  template: 'emptied',
  refers: 'formula',
  reads: { quantity: 'own', role: 'given' },
  noted: true,
};
const heat: Field = {
  label: 'heat number',
  schema: { description: 'Heat of the stock.', type: 'string' },
  computed: false,
  template: 'emptied',
  box: { place: 4.5, first: false },
};

const cellFields = CELL_FIELDS.fields as Record<string, Part>;
const titleFields = TITLE_FIELDS.fields as Record<string, Part>;

beforeAll(() => {
  cellFields.depth = depth;
  titleFields.heat = heat;
});
afterAll(() => {
  delete cellFields.depth;
  delete titleFields.heat;
});

type More = CellRecord & { depth?: unknown };

const job = (more: Partial<More> = {}): SheetFile => {
  const file = bushJob();
  Object.assign(file.title, { heat: 'A 117' });
  file.cells[3] = { ...file.cells[3]!, ...more } as CellRecord;
  return file;
};
const depthOf = (file: SheetFile, at = 3) => (file.cells[at] as More).depth;

it('a field is there by its record alone: in the file', () => {
  const read = readSheet(writeSheet(job({ depth: '0.030 in' })));
  expect('file' in read && depthOf(read.file)).toBe('0.030 in');
  expect(writeSheet(job({ depth: '0.030 in' }))).toMatch(/"measured"[\s\S]*"depth": "0.030 in"/);
  expect(readSheet(JSON.stringify(job({ depth: 3 })))).toMatchObject({
    message: expect.stringContaining('cells[3].depth is a whole number; it must be text'),
  });
  expect(fingerprint(job({ depth: '0.030 in' }))).not.toBe(fingerprint(job()));
});

it('in undo, and with the names of cells kept up to date in it', () => {
  const sheet = SheetDocument.fromFile(job());
  sheet.setField('c4', 'depth', '=bore / 75');
  expect(sheet.undoLabel()).toBe('depth of case of bush_od');
  sheet.renameCell('c3', 'housing_bore');
  expect(depthOf(sheet.toFile())).toBe('=housing_bore / 75');
  sheet.undo();
  sheet.undo();
  expect(depthOf(sheet.toFile())).toBeUndefined();
  sheet.setTitle('heat' as 'part', 'B 2');
  expect(sheet.undoLabel()).toBe('title block, heat number');
});

it('in the history', () => {
  const { cells, sheet } = differences(job(), { ...job({ depth: '0.040 in' }), title: { title: 'Bush' } });
  expect(cells.map(({ fields }) => fields.map(({ field }) => fieldWords(field)))).toEqual([
    ['depth of case'],
  ]);
  expect(cellValueWords('depth', cells[0]?.fields[0]?.after)).toBe('0.040 in');
  expect(sheet.map(({ field }) => sheetFieldWords(field))).toContain('title block, heat number');
});

it('in a template and what a job hears of it', () => {
  const { file, emptied } = templateOf(job({ depth: '0.030 in' }), () => false);
  expect(depthOf(file)).toBeUndefined();
  expect(emptied).toContainEqual({ id: 'c4', field: 'depth', text: '0.030 in' });
  expect(emptied).toContainEqual({ field: 'title.heat', text: 'A 117' });
  expect(newsOf(job(), job({ depth: '0.030 in' }))).toEqual([]);
});

it('in other units', () => {
  expect(settledTexts(job({ depth: '.030' }), 'mm', () => undefined, NO_HANDBOOK)).toContainEqual({
    cell: 'c4',
    field: 'depth',
    text: '.030 in',
  });
});

it('on paper', () => {
  const { title, cells } = job({ depth: '0.030 in' });
  const byId = new Map(cells.map((record) => [record.id, record]));
  const notes = paperNotes({
    state: { title, order: [...byId.keys()] },
    line: (id) => ({ record: byId.get(id)! }) as never,
    numberOf: () => 3,
    titleOf: (id) => byId.get(id)!.label!,
  });
  expect(notes).toContain('3 Bush outside diameter, depth of case: 0.030 in');
  expect(titleBoxes().map(({ label }) => label)).toEqual([
    'Part',
    'Machine',
    'For whom',
    'Material',
    'Heat number',
    'Drawn by',
    'Checked by',
    'Date',
    'Revision',
    'Sheet number',
  ]);
});
