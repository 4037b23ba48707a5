import { expect, it } from 'vitest';
import { differences } from '../../src/document/differences.ts';
import { SheetDocument } from '../../src/document/sheet-document.ts';
import { bushJob } from './sample.ts';

const edited = (edit: (sheet: SheetDocument) => void) => {
  const sheet = SheetDocument.fromFile(bushJob());
  edit(sheet);
  return sheet.toFile();
};

it('a sheet does not differ from itself', () => {
  expect(
    differences(
      bushJob(),
      edited(() => {}),
    ),
  ).toEqual({ cells: [], sheet: [], moved: false });
});

it('a rename is one difference, not one in every formula', () => {
  const after = edited((sheet) => sheet.renameCell('c3', 'hole'));
  expect(differences(bushJob(), after)).toMatchObject({
    cells: [{ id: 'c3', what: 'changed', fields: [{ field: 'name', before: 'bore', after: 'hole' }] }],
    sheet: [],
  });
});

it('names each field that changed, cells added and gone, settings and order', () => {
  let added = '';
  const after = edited((sheet) => {
    sheet.setField('c4', 'limits.lower', undefined);
    sheet.setEntry('c6', '=bore');
    added = sheet.addCell('c1', { label: 'Wall' });
    sheet.deleteCells(['c5']);
    sheet.moveCell('c6', 'c2');
    sheet.setTitle('part', 'bush');
    sheet.setUnits({ length: 'mm' });
  });
  expect(differences(bushJob(), after)).toMatchObject({
    cells: [
      { id: added, what: 'added', cell: { label: 'Wall' } },
      {
        id: 'c6',
        what: 'changed',
        fields: [{ field: 'entry', before: '=bore - press.close_in', after: '=bore' }],
      },
      {
        id: 'c4',
        what: 'changed',
        fields: [{ field: 'limits.lower', before: '=bore + 0.002 in', after: undefined }],
      },
      { id: 'c5', what: 'gone', cell: { name: 'press' } },
    ],
    sheet: [
      { field: 'units.length', before: 'in', after: 'mm' },
      { field: 'title.part', before: undefined, after: 'bush' },
    ],
    moved: true,
  });
});
