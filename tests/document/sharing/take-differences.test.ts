import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import { differences } from '../../../src/document/differences.ts';
import { takeDifferences } from '../../../src/document/sharing/take-differences.ts';
import { SheetDocument } from '../../../src/document/sheet-document.ts';
import { bushJob } from '../sample.ts';

const none = { cells: new Set<string>(), sheet: new Set<string>(), order: false };
const lines = (...ids: string[]) => ({ ...none, cells: new Set(ids) });
const edited = (edits: Record<string, Partial<CellRecord>>): SheetFile => ({
  ...bushJob(),
  cells: bushJob().cells.map((cell) => ({ ...cell, ...edits[cell.id] })),
});
const cellOf = (file: SheetFile, id: string) => file.cells.find((cell) => cell.id === id);

it('takes the chosen lines and settings, and leaves the rest as it is here', () => {
  const came = {
    ...edited({ c3: { entry: '2.2600 in' }, c4: { entry: '=bore + 0.0035 in' } }),
    title: { title: 'Countershaft bush, theirs' },
    rule: 'worst-case' as const,
  };
  const { file, along } = takeDifferences(bushJob(), came, { ...lines('c4'), sheet: new Set(['rule']) });
  expect(file).toEqual({
    ...bushJob(),
    rule: 'worst-case',
    cells: bushJob().cells.map((cell) => (cell.id === 'c4' ? { ...cell, entry: '=bore + 0.0035 in' } : cell)),
  });
  expect(along).toEqual([]);
});

it('a formula that is taken means the line it meant, whatever that is called here', () => {
  const came = SheetDocument.fromFile(bushJob());
  came.renameCell('c3', 'housing');
  came.setEntry('c4', '=housing + 0.0035 in');
  const { file } = takeDifferences(bushJob(), came.toFile(), lines('c4'));
  expect(cellOf(file, 'c4')).toMatchObject({
    entry: '=bore + 0.0035 in',
    limits: { lower: '=bore + 0.002 in' },
  });
  // Taken the other way about, what is here speaks by the new name.
  const renamed = takeDifferences(bushJob(), came.toFile(), lines('c3'));
  expect(cellOf(renamed.file, 'c4')).toMatchObject({ entry: '=housing + 0.003 in' });
  expect(renamed.file.variants?.[0]?.entries).toMatchObject({ bush_od: '=housing + 0.004 in' });
});

it('a new line that a taken one goes by comes along, and its name turns no formula here', () => {
  const here = SheetDocument.fromFile(bushJob());
  here.insertCells('c6', [{ role: 'given', name: 'allowance', entry: '0.5 in' }]);
  here.setEntry('c6', '=bore - allowance');
  const came = SheetDocument.fromFile(bushJob());
  const [id] = came.insertCells('c3', [{ role: 'given', name: 'allowance', entry: '0.001 in' }]);
  came.setEntry('c4', '=bore + allowance');
  const { file, along } = takeDifferences(here.toFile(), came.toFile(), lines('c4'));
  expect(along.map((cell) => cell.id)).toEqual([id]);
  const added = cellOf(file, id!)!;
  expect(added.name).not.toBe('allowance');
  expect(cellOf(file, 'c4')!.entry).toBe(`=bore + ${added.name}`);
  expect(cellOf(file, 'c6')!.entry).toBe('=bore - allowance');
  expect(file.cells.map((cell) => cell.id).indexOf(id!)).toBe(3);
});

it('a line that goes leaves its name to no other, where it is still gone by', () => {
  const here = bushJob();
  const came: SheetFile = {
    ...bushJob(),
    cells: bushJob().cells.map((cell) =>
      cell.id === 'c3' ? { id: 'other', role: 'given', name: 'bore', entry: '9 in' } : cell,
    ),
  };
  const { file } = takeDifferences(here, came, lines('c3', 'other'));
  expect(cellOf(file, 'c3')).toBeUndefined();
  expect(cellOf(file, 'c4')!.entry).toBe('=bore + 0.003 in');
  expect(cellOf(file, 'other')!.name).not.toBe('bore');
});

it('the order alone can be taken', () => {
  const came = { ...bushJob(), cells: bushJob().cells.toReversed() };
  const { file } = takeDifferences(bushJob(), came, { ...none, order: true });
  expect(file.cells.map(({ id }) => id)).toEqual(['c6', 'c5', 'c4', 'c3', 'c2', 'c1']);
});

it('law: all of them taken, the sheet says what came; none of them, what it said', () => {
  const command = fc.tuple(fc.constantFrom('entry', 'name', 'gone', 'new', 'move'), fc.nat(99), fc.nat(99));
  fc.assert(
    fc.property(fc.array(command, { maxLength: 8 }), (commands) => {
      const sheet = SheetDocument.fromFile(bushJob());
      for (const [what, a, b] of commands) {
        const order = sheet.order();
        const id = order[a % order.length];
        if (!id) break;
        const name = sheet.cells()[b % order.length]?.name ?? 'bore';
        if (what === 'entry') sheet.setEntry(id, `=${name} + ${b} in`);
        else if (what === 'name') sheet.renameCell(id, `n_${b}`);
        else if (what === 'gone') sheet.deleteCells([id]);
        else if (what === 'new')
          sheet.insertCells(id, [{ role: 'worked', name: `w_${b}`, entry: `=${name}` }]);
        else sheet.moveCell(id, order[b % order.length]!);
      }
      const [here, came] = [bushJob(), sheet.toFile()];
      const found = differences(here, came);
      const all = {
        cells: new Set(found.cells.map(({ id }) => id)),
        sheet: new Set(found.sheet.map(({ field }) => field)),
        order: found.moved,
      };
      const taken = takeDifferences(here, came, all).file;
      const left = differences(taken, came);
      // A name may have had to be another; everything else is what came.
      expect(left.sheet).toEqual([]);
      expect(left.moved).toBe(false);
      expect(
        left.cells.flatMap(({ fields }) => fields.map(({ field }) => field)).filter((f) => f !== 'name'),
      ).toEqual([]);
      expect(left.cells.filter(({ what }) => what !== 'changed')).toEqual([]);
      expect(takeDifferences(here, came, none).file).toEqual(here);
    }),
    { seed: 14, numRuns: 60 },
  );
});
