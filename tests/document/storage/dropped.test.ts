import { deleteDB } from 'idb';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { DATABASE } from '../../../src/document/storage/database.ts';
import { bushJob } from '../sample.ts';
import { opened, until, useShops } from './shops.ts';

const newShop = useShops();

class Kept extends Map<string, string> {
  setItem = (key: string, text: string) => void this.set(key, text);
  getItem = (key: string) => this.get(key) ?? null;
  removeItem = (key: string) => void this.delete(key);
}

beforeEach(() => {
  const kept = new Kept();
  // As a browser has it: what is kept stands as own keys.
  vi.stubGlobal(
    'localStorage',
    new Proxy(kept, {
      ownKeys: () => [...kept.keys()],
      getOwnPropertyDescriptor: () => ({ enumerable: true, configurable: true }),
    }),
  );
  return () => vi.unstubAllGlobals();
});

describe('a database that goes under an open sheet', () => {
  it('gets the sheet again, whole, in every tab that has it open', async () => {
    const [here, there] = [await newShop(), await newShop()];
    const id = await here.create(bushJob());
    const [one, two] = [opened(await here.open(id)), opened(await there.open(id))];
    one.document.setEntry('c3', '2.26 in');
    await one.retry();
    await until(() => two.document.cell('c3')?.entry === '2.26 in');
    await deleteDB(DATABASE);
    one.document.setEntry('c3', '2.27 in');
    two.document.setField('c4', 'note', 'from the other tab');
    await until(() => one.idle && two.idle && one.state().state === 'saved' && two.state().state === 'saved');
    const sheet = opened(await (await newShop()).open(id));
    expect(sheet.document.cell('c3')?.entry).toBe('2.27 in');
    expect(sheet.document.cell('c4')?.note).toBe('from the other tab');
    expect(sheet.document.cells()).toHaveLength(bushJob().cells.length);
    expect(sheet.document.title()).toEqual(bushJob().title);
  });

  it('says that the sheet is not saved until it is', async () => {
    const shop = await newShop();
    const sheet = opened(await shop.open(await shop.create(bushJob())));
    const said: string[] = [];
    sheet.observeState(({ state, message }) => said.push(`${state}: ${message?.slice(0, 40)}`));
    await deleteDB(DATABASE);
    await until(() => said.at(-1) === 'saved: undefined');
    expect(said[0]).toMatch(/^unsaved: The browser has closed its store/);
  });

  it('is told of with the titles of what went, here and at the next opening, until it was read', async () => {
    const shop = await newShop();
    await shop.create({ ...bushJob(), title: { title: 'Pump shaft' } });
    const sheet = opened(await shop.open(await shop.create(bushJob())));
    await deleteDB(DATABASE);
    await until(() => shop.missing().length > 0 && sheet.idle);
    expect(shop.missing().map(({ title }) => title)).toEqual(['Pump shaft']);
    expect(shop.dropped()).toBeGreaterThan(0);
    const next = await newShop();
    expect(next.list().map(({ title }) => title.title)).toEqual(['Countershaft bush']);
    expect(next.missing().map(({ title }) => title)).toEqual(['Pump shaft']);
    next.forgetMissing();
    expect((await newShop()).missing()).toEqual([]);
  });

  it('is not asked for a sheet that was deleted for good: nothing is missing', async () => {
    const [here, there] = [await newShop(), await newShop()];
    const id = await here.create(bushJob());
    await here.discard(id);
    expect([...here.missing(), ...there.missing()]).toEqual([]);
  });
});

describe('a sheet deleted for good elsewhere', () => {
  it('is not called saved, and is stored whole with the next entry', async () => {
    const [here, there] = [await newShop(), await newShop()];
    const id = await here.create(bushJob());
    const sheet = opened(await here.open(id));
    await there.discard(id);
    await until(() => sheet.state().state === 'unsaved');
    expect(await (await newShop()).open(id)).toMatchObject({
      message: expect.stringContaining('no such sheet'),
    });
    sheet.document.setEntry('c3', '2.26 in');
    await until(() => sheet.idle && sheet.state().state === 'saved');
    const again = opened(await (await newShop()).open(id));
    expect(again.document.cells()).toHaveLength(bushJob().cells.length);
    expect(again.document.cell('c3')?.entry).toBe('2.26 in');
  });
});

it('an update is added to the base it was built on; where that is another, the whole sheet is stored', async () => {
  const shop = await newShop();
  const id = await shop.create(bushJob());
  const { updates } = await shop.vault.updates(id);
  await shop.vault.discard(id);
  const add = (update: Uint8Array, base: string | undefined) =>
    shop.vault.append(id, { update, base, whole: () => Uint8Array.of(0, 0) }, (row) => row);
  const { base } = await add(updates[0]!, undefined);
  expect(await add(Uint8Array.of(1), base)).toMatchObject({ count: 2, base });
  // A tab that knows another base: the whole sheet goes in.
  await add(Uint8Array.of(2), 'another');
  expect((await shop.vault.updates(id)).updates.at(-1)).toEqual(Uint8Array.of(0, 0));
});

it('a sheet of which only the end is left is not shown as if it were all', async () => {
  const shop = await newShop();
  const id = await shop.create(bushJob());
  const sheet = opened(await shop.open(id));
  const before = sheet.document.stateVector();
  sheet.document.setEntry('c3', '2.26 in');
  const end = sheet.document.updateSince(before);
  await sheet.close();
  await shop.vault.discard(id);
  await shop.vault.append(id, { update: end, base: undefined, whole: () => end }, (row) => row);
  expect(await shop.open(id)).toMatchObject({ message: expect.stringContaining('lost the beginning') });
});
