import { expect, test } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import { cautionText, cautionTexts } from '../../cells/record/caution.ts';
import type { CellRecord } from '../../shared/sheet/format.ts';
import { careOf } from '../../src/engine/report/care.ts';
import { linesOfStep } from '../../src/page/bench/step.ts';

const cell = (kind: string, inputs: Record<string, string> = {}): CellRecord => ({
  id: kind,
  role: 'cell',
  kind,
  inputs,
});

const care = (record: CellRecord, ...others: Array<[name: string, record: CellRecord]>): string[] =>
  careOf(record, { library, named: (name) => new Map(others).get(name) });

test('what the table notes of a metal is said at its line and at the cell that takes it', () => {
  const bronze = cell('material', { material: 'c17200' });
  const said = /poisonous to breathe/;
  expect(care(bronze).some((text) => said.test(text))).toBe(true);
  expect(
    care(cell('bush-close-in', { bush_material: 'bronze' }), ['bronze', bronze]).some((text) =>
      said.test(text),
    ),
  ).toBe(true);
  expect(care(cell('material', { material: 'gray-iron-30' })).some((text) => said.test(text))).toBe(false);
});

test('a caution for one way of doing it is said where that way is taken', () => {
  const nitrogen = /litre of liquid nitrogen/;
  expect(care(cell('shrink-fit')).some((text) => nitrogen.test(text))).toBe(false);
  expect(
    care(cell('shrink-fit', { inner_temperature: '-78 degC' })).some((text) => nitrogen.test(text)),
  ).toBe(true);
});

test('while no metal is chosen, the cautions of all of them are said', () => {
  for (const kind of library.kinds.values())
    for (const caution of kind.cautions)
      if (typeof caution !== 'string' && caution.material)
        expect(care(cell(kind.key)), kind.key).toContain(cautionText(caution));
});

test('every caution of every kind can come to be said', () => {
  for (const kind of library.kinds.values()) {
    const all = Object.fromEntries(kind.inputs.map((input) => [input.name, '1']));
    expect(
      cautionTexts(kind).filter((text) => !care(cell(kind.key, all)).includes(text)),
      kind.key,
    ).toEqual([]);
  }
});

test('at the machine every line of the sheet belongs to a step', () => {
  const order = ['a', 'b', 'c', 'd', 'e'];
  const stops = [{ cell: 'b' }, { cell: 'd' }, { cell: 'd' }];
  expect(linesOfStep(order, stops, 0)).toEqual(['a', 'b']);
  expect(linesOfStep(order, stops, 1)).toEqual(['c', 'd', 'e']);
  expect(linesOfStep(order, stops, 2)).toEqual(['c', 'd', 'e']);
});
