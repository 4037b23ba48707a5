import { describe, expect, test } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import { SheetDocument } from '../../src/document/sheet-document.ts';
import { computeSheet } from '../../src/engine/compute.ts';

const withSection = [...library.kinds.values()].filter(({ section }) => section);

test('a section brings its own cell along, and cells of the library as it has them', () => {
  expect(withSection.length).toBeGreaterThan(0);
  for (const { key, section } of withSection) {
    const cells = section!.filter(({ role }) => role === 'cell');
    expect(cells.map(({ kind }) => kind)).toContain(key);
    for (const { kind, edition } of cells) expect(library.kinds.get(kind!)?.edition).toBe(edition);
  }
});

describe('a part beside its original, put in as one step', () => {
  const sheet = SheetDocument.fromFile({
    format: 'fitwright-sheet',
    version: 2,
    title: { title: 'Gland of the feed pump' },
    units: { length: 'mm' },
    rule: 'worst-case',
    cells: [
      { id: 'a', name: 'original_1', role: 'given', quantity: 'length', entry: '5 mm' },
      { id: 'b', name: 'stud', role: 'chosen', quantity: 'length', entry: '12.01 mm' },
    ],
  });
  const { section } = library.kinds.get('original-compared')!;
  const ids = sheet.insertCells('a', section!);
  const at = (name: string) => sheet.cells().find((cell) => cell.name === name)!;
  const result = (name: string) =>
    computeSheet(sheet.toFile(), library).cells.find(({ id }) => id === at(name).id)!.outputs;

  test('its lines refer to each other, also where a name was taken', () => {
    expect(ids).toHaveLength(section!.length);
    const [, first] = ids;
    expect(sheet.cells().find(({ id }) => id === first)?.name).not.toBe('original_1');
    expect(at('feature_1').inputs?.original).toBe(`= ${sheet.cells().find(({ id }) => id === first)?.name}`);
    expect(at('beside').inputs).toEqual({
      feature_1: 'feature_1',
      feature_2: 'feature_2',
      feature_3: 'feature_3',
    });
  });

  test('filled in, it says whether all but the named agree within what was read', () => {
    const readings = ['12.00 mm ± 0.02 mm', '30.00 mm ± 0.02 mm', '8.00 mm ± 0.02 mm'];
    readings.forEach((text, i) => {
      sheet.setField(ids[1 + 2 * i]!, 'entry', text);
    });
    sheet.setField(at('feature_1').id, 'inputs.new', '= stud');
    sheet.setField(at('feature_2').id, 'inputs.new', '30.5 mm');
    sheet.setField(at('feature_2').id, 'inputs.meant', '0.5 mm');
    sheet.setField(at('feature_2').id, 'inputs.why', 'wear-made-up');
    sheet.setField(at('feature_3').id, 'inputs.new', '8.01 mm');
    const together = result('beside');
    expect(together.differ?.planned?.value).toBe(1);
    expect(together.others_off?.planned?.value).toBeCloseTo(-0.01e-3, 9);
    expect(together.others_off?.check.asNew.state).toMatch(/^holds/);
    expect(together.named_off?.check.asNew.state).toMatch(/^holds/);
    sheet.setField(at('feature_3').id, 'inputs.new', '8.03 mm');
    expect(result('beside').others_off?.check.asNew.state).toBe('misses');
  });
});
