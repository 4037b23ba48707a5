import { expect, it } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import type { SheetFile } from '../../../shared/sheet/format.ts';
import { heldHere } from '../../../src/document/sharing/here.ts';
import { inOwnUnits } from '../../../src/document/sharing/own-units.ts';
import { MemoryVault } from '../../../src/document/storage/memory-vault.ts';
import { Shop } from '../../../src/document/storage/shop.ts';
import { quantityAt as quantityIn } from '../../../src/page/state/quantity-at.ts';
import { printer } from '../prints.ts';
import { bushJob } from '../sample.ts';

const quantityAt = quantityIn(library);
const shop = () => new Shop(new MemoryVault(), [], { state: 'saved' }, printer);

const changed = (file: SheetFile, entry: string): SheetFile => ({
  ...file,
  cells: file.cells.map((cell) => (cell.id === 'c4' ? { ...cell, entry } : cell)),
});

it('knows the very same sheet again, read in other units too', async () => {
  const here = shop();
  const id = await here.create(bushJob());
  const [held] = await heldHere(here, { ...bushJob(), units: { length: 'mm', ton: 'short_ton' } });
  expect(held).toMatchObject({
    id,
    standing: 'same',
    differences: { cells: [], sheet: [{ field: 'units.length' }], moved: false },
  });
});

it('says what differs, cell by cell, from what is here', async () => {
  const here = shop();
  const id = await here.create(bushJob());
  const [held] = await heldHere(here, changed(bushJob(), '=bore + 0.0035 in'));
  expect(held).toMatchObject({ id, standing: 'other' });
  expect(held!.differences.cells.map((cell) => [cell.id, cell.fields])).toEqual([
    ['c4', [{ field: 'entry', before: '=bore + 0.003 in', after: '=bore + 0.0035 in' }]],
  ]);
});

it('says what differs in the lengths of what is here, of a sheet from a shop of the other system', async () => {
  const here = shop();
  const inLengths = async (file: SheetFile, length: 'in' | 'mm') => inOwnUnits(file, length, quantityAt).file;
  await here.create(await inLengths(bushJob(), 'mm'));
  const [held] = await heldHere(here, changed(bushJob(), '=bore + 0.0035 in'), inLengths);
  expect(held!.differences).toMatchObject({ sheet: [], moved: false });
  expect(held!.differences.cells.map(({ id }) => id)).toEqual(['c4']);
});

it('knows a revision that is here and has gone on since', async () => {
  const here = shop();
  const id = await here.create(bushJob());
  await here.revise(id, 'as sent out');
  const open = await here.open(id);
  if (!('document' in open)) throw new Error(open.message);
  open.document.setEntry('c4', '=bore + 0.002 in');
  await open.close();
  const [held] = await heldHere(here, bushJob());
  expect(held).toMatchObject({ standing: 'older', revision: { n: 1, label: 'as sent out' } });
});

it('takes neither another job, nor a template, nor a deleted sheet for the one that comes in', async () => {
  const here = shop();
  await here.create({ ...bushJob(), cells: bushJob().cells.map((cell) => ({ ...cell, id: `x${cell.id}` })) });
  await here.create({ ...bushJob(), template: true });
  const deleted = await here.create(bushJob());
  await here.remove(deleted);
  expect(await heldHere(here, bushJob())).toEqual([]);
});
