import { expect, test } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import type { CellRecord } from '../../shared/sheet/format.ts';
import { Engine } from '../../src/engine/engine.ts';
import { plain } from './closed-form.ts';
import { sheetOf } from './random-sheet.ts';

const number = (name: string, entry: string): CellRecord =>
  plain(name, 'worked', entry, { quantity: 'number' });

// In doubles 500 mm - 499.99 mm is 0.01 mm to within 4e-12 of itself: a trillionth of 500 mm, not of what is left of it.
const cells = [
  plain('long', 'given', '500 mm'),
  plain('short', 'given', '499.99 mm'),
  plain('d', 'worked', '= long - short'),
  plain('same', 'worked', '= d'),
  number('steps', '= same / 0.01 mm'),
  number('at_least', '= IF(d >= 0.01 mm; 1; 0)'),
  number('beyond', '= IF(d > 0.01 mm; 1; 0)'),
  number('equal', '= IF(same = 0.01 mm; 1; 0)'),
  number('whole', '= INT(steps)'),
  number('up', '= ROUNDUP(steps; 0)'),
  plain('rest', 'worked', '= MOD(same; 0.01 mm)'),
  plain('none', 'worked', '= (long - 499.99 mm) - 0.01 mm'),
  number('below', '= IF(none < 0 mm; 1; 0)'),
  number('above', '= IF(none > 0 mm; 1; 0)'),
];

const figures = (engine: Engine, file = sheetOf(cells)) =>
  new Map(engine.load(file).cells.map(({ id, outputs }) => [id.slice(2), outputs.value?.planned]));

test('a difference that is worked out in one cell is as uncertain where another compares it', () => {
  const engine = new Engine(library);
  const found = figures(engine);
  const expected = { at_least: 1, beyond: 0, equal: 1, whole: 1, up: 1, rest: 0, below: 0, above: 0 };
  for (const [name, value] of Object.entries(expected)) {
    const figure = found.get(name);
    expect([name, figure?.value, figure?.low, figure?.high]).toEqual([name, value, value, value]);
  }
  engine.destroy();
});

test('and goes by the cell as it stands after it was edited', () => {
  const engine = new Engine(library);
  figures(engine, sheetOf(cells.map((cell) => (cell.name === 'd' ? plain('d', 'given', '0.02 mm') : cell))));
  const after = engine.apply({ changed: [plain('d', 'worked', '= long - short')] }).cells;
  const value = (name: string) => after.find(({ id }) => id === `c_${name}`)?.outputs.value?.planned?.value;
  expect([value('at_least'), value('beyond'), value('whole'), value('up')]).toEqual([1, 0, 1, 1]);
  engine.destroy();
});
