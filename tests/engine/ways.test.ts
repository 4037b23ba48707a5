import { describe, expect, it } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import type { CellRecord } from '../../shared/sheet/format.ts';
import { readSheet } from '../../shared/sheet/read.ts';
import { SHEET_FIELDS } from '../../shared/sheet/sheet-fields.ts';
import { forksOf } from '../../shared/sheet/ways.ts';
import { writeSheet } from '../../shared/sheet/write.ts';
import { flatten } from '../../src/document/model/fields.ts';
import { isStorable } from '../../src/document/model/stored-fault.ts';
import { SheetDocument } from '../../src/document/sheet-document.ts';
import { templateOf } from '../../src/document/template.ts';
import { computeSheet } from '../../src/engine/compute.ts';
import { Engine } from '../../src/engine/engine.ts';
import { standingOf } from '../../src/engine/report/standing.ts';
import { settingsOf } from '../../src/engine/rows/whole-sheet.ts';
import { printOf } from '../document/prints.ts';
import { ofKind, plain } from './closed-form.ts';
import { sheetOf } from './random-sheet.ts';

const limits = { lower: '2.249 in', upper: '2.251 in' };
const before = { to: 'bush cut', by: 'before pressing' };
const inPlace = { to: 'bush cut', by: 'in place' };
const cells: CellRecord[] = [
  ofKind('gauge', 'mike', { gauge: 'micrometer-2-3-in' }),
  plain('journal', 'measured', '2.2500; 2.2500 in', { gauge: 'mike', limits, label: 'Journal' }),
  plain('early', 'worked', '= journal + 5 thou', { limits, way: before, label: 'Cut before' }),
  plain('late', 'worked', '= journal', { limits, way: inPlace, label: 'Cut in place' }),
  plain('blank', 'worked', '', { limits, way: inPlace }),
  plain('other', 'worked', '= early', { label: 'Other' }),
];
const sheet = { ...sheetOf(cells), units: { length: 'in' as const } };
const taken = (by: string) => ({ ...sheet, ways: { 'bush cut': by } });
const words = (file: typeof sheet & { ways?: Record<string, string> }) => {
  const { cells: results } = computeSheet(file, library);
  return standingOf(
    file.cells.map((record) => ({ record, result: results.find(({ id }) => id === record.id) })),
    file.units,
  ).words.replaceAll('\u00a0', ' ');
};

describe('several ways to one end', () => {
  it('each counts until one is taken; then the rest is set aside and counts no more', () => {
    expect(words(sheet)).toBe(
      'Proven in limits: 2 of 4 (2 where read). Out: Cut before 2.2550 against 2.2510 in. Waiting: 1.',
    );
    expect(words(taken('before pressing'))).toMatch(/^Proven in limits: 1 of 2 .*Out: Cut before/);
    expect(words(taken('in place'))).toMatch(/2 of 3.*Waiting: 1\.$/);
  });

  it('sets nothing aside where the way taken is not there, and where there is but one', () => {
    expect(words(taken('by hand'))).toBe(words(sheet));
    const one = {
      ...taken('before pressing'),
      cells: cells.filter(({ way }) => way?.by !== 'before pressing'),
    };
    expect(forksOf(one.cells, one.ways)).toEqual([]);
    expect(words(one)).toMatch(/Waiting: 1\.$/);
  });

  it('keeps the figures of what is set aside: other lines stand on them', () => {
    const found = computeSheet(taken('in place'), library);
    expect(found.byName('early')).toMatchObject({ aside: 'in place', slips: [], remarks: [] });
    expect(found.byName('early')?.outputs.value).toMatchObject({
      planned: { value: expect.closeTo(2.255 * 0.0254, 9) },
      check: { asNew: { state: 'no limits' } },
    });
    expect(found.byName('other')?.aside).toBeUndefined();
    expect(found.byName('other')?.outputs.value?.planned).toBeDefined();
  });

  it('waits for nothing where it is set aside, nor says so', () => {
    const { entry: _entry, ...blank } = cells.find(({ name }) => name === 'early')!;
    const file = { ...taken('in place'), cells: cells.map((cell) => (cell.id === blank.id ? blank : cell)) };
    const counts = computeSheet({ ...file, ways: {} }, library).byName('early');
    expect(counts?.outputs.value).toMatchObject({
      problem: { kind: 'blank' },
      check: { asNew: { state: 'waiting' } },
    });
    const aside = computeSheet(file, library).byName('early')?.outputs.value;
    expect(aside?.problem).toBeUndefined();
    expect(aside?.check.asNew.state).toBe('no limits');
  });

  it('follows every edit as a sheet built anew does: taken, left, a way that comes and goes', () => {
    const engine = new Engine(library);
    engine.load(sheet);
    const now = new Map(cells.map((cell) => [cell.id, cell]));
    const results = new Map(computeSheet(sheet, library).cells.map((cell) => [cell.id, cell]));
    let settings = settingsOf(sheet);
    const step = (changed: CellRecord[], ways?: Record<string, string>) => {
      for (const cell of changed) now.set(cell.id, cell);
      if (ways) settings = { ...settings, ways };
      for (const cell of engine.apply({ changed, ...(ways ? { settings } : {}) }).cells)
        results.set(cell.id, cell);
      const fresh = new Engine(library).apply({ changed: [...now.values()], settings }).cells;
      for (const cell of fresh) expect(results.get(cell.id), cell.id).toEqual(cell);
    };
    step([], { 'bush cut': 'in place' });
    // The last lines of the way taken go: nothing is set aside for a way that is not there.
    step([
      { ...cells[3]!, way: before },
      { ...cells[4]!, way: before },
    ]);
    step([cells[3]!]);
    step([], {});
  });

  it('is one field of the sheet: undone, kept in the file, told by the fingerprint, and not lent by a template', () => {
    const document = SheetDocument.fromFile(sheet, { id: 'job' });
    document.setWay('bush cut', 'in place');
    const file = document.toFile();
    expect(file).toMatchObject({ ways: { 'bush cut': 'in place' }, needs: ['ways'] });
    expect(document.undoLabel()).toBe('way taken to bush cut');
    expect(readSheet(writeSheet(file))).toMatchObject({ file, warnings: [] });
    expect(printOf(file)).not.toBe(printOf(sheet));
    const { file: template, emptied } = templateOf(file, () => false);
    expect(template.ways).toBeUndefined();
    expect(SheetDocument.fromFile(template).toFile().needs).toBeUndefined();
    expect(emptied).toContainEqual({ field: 'ways.bush cut', text: 'in place' });
    expect(template.cells[2]?.way).toEqual(before);
    document.setWay('bush cut', undefined);
    expect(document.toFile()).toEqual(sheet);
    document.setWay('a.b %', 'in place');
    expect(document.ways()).toEqual({ 'a.b %': 'in place' });
  });

  it.each(['constructor', '__proto__', 'prototype', 'toString', 'a.b %'])(
    'may lead to what is called %s, in a file as in the document',
    (to) => {
      const named = (by: string) => ({
        ...sheet,
        cells: cells.map((cell) => (cell.way ? { ...cell, way: { ...cell.way, to } } : cell)),
        ways: { [to]: by },
      });
      const document = SheetDocument.fromFile(named('before pressing'), { id: 'job' });
      document.setWay(to, 'in place');
      const read = readSheet(writeSheet(document.toFile()));
      expect(read).toMatchObject({ warnings: [], unknown: [] });
      if (!('file' in read)) return;
      expect(printOf(read.file)).toBe(printOf(document.toFile()));
      expect(printOf(read.file)).not.toBe(printOf(named('before pressing')));
      expect(words(read.file as typeof sheet)).toBe(words(taken('in place')));
      const [key] = flatten({ ways: { [to]: '' } }, SHEET_FIELDS).keys();
      expect(isStorable('sheet', key!, 'in place')).toBe(true);
    },
  );
});

describe('the head line', () => {
  const head = (...more: CellRecord[]) => words({ ...sheet, cells: [cells[0]!, ...more] });

  it('says how much is proven, what is open against which limit, and what only holds', () => {
    expect(head()).toBe('No limits to check against yet.');
    expect(head(cells[1]!)).toBe('Proven in limits: the one check (1 where read).');
    const strength = plain('strength', 'worked', '1.4 ± 0.5', {
      quantity: 'number',
      role: 'given',
      label: 'Strength',
      limits: { lower: '1.2' },
    });
    expect(head(cells[1]!, strength)).toBe(
      'Proven in limits: 1 of 2 (1 where read). Open: Strength 1.40 against 1.2.',
    );
  });

  it('names three and counts the rest', () => {
    const out = [1, 2, 3, 4, 5].map((k) => plain(`p${k}`, 'given', '3 in', { limits }));
    expect(head(...out)).toMatch(/^Proven in limits: 0 of 5\. Out: p1 3.*; p2 .*; p3 .*; 2 more\.$/);
  });
});
