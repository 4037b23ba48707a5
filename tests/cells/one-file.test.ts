import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { catalogueOf, folders, library } from '../../cells/catalogue.ts';
import type { CellKind } from '../../cells/record/cell.ts';
import type { SheetFile } from '../../shared/sheet/format.ts';
import { computeSheet } from '../../src/engine/compute.ts';
import { startCell } from '../../src/setup/new-cell.mjs';
import { inRepository } from '../../src/setup/root.mjs';

// A house of its own, laid out as the library is, so that nothing is ever written into the real one.
const house = mkdtempSync(join(tmpdir(), 'fitwright-cells-'));
const kinds = join(house, 'kinds');
mkdirSync(kinds);
mkdirSync(join(house, 'record'));
copyFileSync(inRepository('cells/record/cell.ts'), join(house, 'record/cell.ts'));
afterAll(() => rmSync(house, { recursive: true, force: true }));

test('one added file is a cell that computes', async () => {
  const started = startCell(kinds, 'spindle-float', "Spindle's float");
  if ('problem' in started) throw new Error(started.problem);
  expect(readdirSync(kinds)).toEqual(['spindle-float.ts']);
  const added = (await import(/* @vite-ignore */ started.path)) as { default: CellKind };
  const grown = catalogueOf({ ...folders, kinds: { ...folders.kinds, [started.path]: added.default } });
  expect(grown.kinds.size).toBe(library.kinds.size + 1);
  expect(grown.kinds.get('spindle-float')?.title).toBe("Spindle's float");

  const file: SheetFile = {
    format: 'fitwright-sheet',
    version: 2,
    title: { title: 'One added cell' },
    units: { length: 'mm' },
    rule: 'worst-case',
    cells: [
      {
        id: 'a',
        role: 'cell',
        name: 'float',
        kind: 'spindle-float',
        edition: 1,
        inputs: { size: '10 mm ± 0.2 mm' },
      },
      { id: 'b', role: 'worked', name: 'twice', quantity: 'length', entry: '= 2 * float.part' },
    ],
  };
  const computed = computeSheet(file, grown);
  const part = computed.byName('float')?.outputs.part?.planned;
  expect(part?.value).toBeCloseTo(0.005, 12);
  expect(part?.high).toBeCloseTo(0.0051, 12);
  expect(computed.byName('twice')?.outputs.value?.planned?.value).toBeCloseTo(0.01, 12);
});

test('a file that is there is never written over, and a key that is none is refused', () => {
  startCell(kinds, 'twice-asked');
  expect(startCell(kinds, 'twice-asked')).toHaveProperty('problem');
  for (const key of ['Spindle', 'a b', '../escape', '', 'x_y', '-a'])
    expect(startCell(kinds, key), key).toHaveProperty('problem');
  expect(existsSync(join(house, 'escape.ts'))).toBe(false);
});

test('two files of one key stop the start, both named', () => {
  const gauge = library.kinds.get('gauge') as CellKind;
  const twice = { ...folders, kinds: { ...folders.kinds, './kinds/second.ts': gauge } };
  expect(() => catalogueOf(twice)).toThrow(/gauge.*gauge\.ts.*second\.ts/);
});
