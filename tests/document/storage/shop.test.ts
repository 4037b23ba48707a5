import { describe, expect, it, vi } from 'vitest';
import { exportText } from '../../../src/document/files.ts';
import { openShop } from '../../../src/document/storage/open-shop.ts';
import { printer } from '../prints.ts';
import { bushJob } from '../sample.ts';
import { opened, refuseWrites, until, useShops } from './shops.ts';

const newShop = useShops();

describe('a shop', () => {
  it('finds a sheet as it was left after it is opened anew', async () => {
    const first = await newShop();
    const id = await first.create(bushJob());
    const sheet = opened(await first.open(id));
    sheet.document.setEntry('c3', '2.26 in');
    sheet.document.renameCell('c3', 'hole');
    expect(sheet.state().state).toBe('saving');
    const left = sheet.document.toFile();
    await sheet.close();

    const second = await newShop();
    expect(second.list()).toMatchObject([
      { id, title: { title: 'Countershaft bush' }, cells: 6, template: false },
    ]);
    expect(opened(await second.open(id)).document.toFile()).toEqual(left);
    expect(await second.file(id)).toEqual(left);
  });

  it('can undo what was done before a sheet was left for the list', async () => {
    const shop = await newShop();
    const id = await shop.create(bushJob());
    const first = opened(await shop.open(id));
    first.document.setEntry('c3', '2.26 in');
    await first.close();
    const again = opened(await shop.open(id));
    expect(again.document.undoLabel()).toBeDefined();
    again.document.undo();
    expect(again.document.toFile()).toEqual(bushJob());
  });

  it('says saved only after the transaction is complete', async () => {
    const shop = await newShop();
    const sheet = opened(await shop.open(await shop.create(bushJob())));
    const states: string[] = [];
    const append = shop.vault.append.bind(shop.vault);
    vi.spyOn(shop.vault, 'append').mockImplementation(async (...args) => {
      const count = await append(...args);
      states.push(`stored while ${sheet.state().state}`);
      return count;
    });
    sheet.observeState(({ state }) => states.push(state));
    sheet.document.setEntry('c3', '2.26 in');
    await sheet.retry();
    expect(states).toEqual(['saving', 'stored while saving', 'saved']);
  });

  it('is one sheet when opened twice, and lets go of it with the last', async () => {
    const shop = await newShop();
    const id = await shop.create(bushJob());
    const [one, two] = [opened(await shop.open(id)), opened(await shop.open(id))];
    expect(one).toBe(two);
    await one.close();
    two.document.setEntry('c3', '2.26 in');
    await two.close();
    expect(opened(await shop.open(id))).not.toBe(one);
  });

  it('answers for a sheet it does not have', async () => {
    const shop = await newShop();
    expect(await shop.open('nowhere')).toMatchObject({ message: expect.stringContaining('no such sheet') });
  });

  it('copies a sheet under an id of its own with the same cells', async () => {
    const shop = await newShop();
    const id = await shop.create(bushJob());
    const copy = await shop.duplicate(id);
    expect(copy).not.toBe(id);
    const file = await shop.file(copy as string);
    expect(file).toEqual({ ...bushJob(), title: { ...bushJob().title, title: 'Countershaft bush (copy)' } });
  });

  it('archives, deletes, brings back and discards', async () => {
    const shop = await newShop();
    const id = await shop.create(bushJob());
    await shop.archive(id);
    expect(shop.find('')).toEqual([]);
    expect(shop.find('', { archived: true })).toHaveLength(1);
    await shop.archive(id, false);
    await shop.remove(id);
    expect(shop.find('')).toEqual([]);
    expect(shop.find('', { removed: true })).toHaveLength(1);
    await shop.bringBack(id);
    expect(shop.find('')).toHaveLength(1);
    expect(await shop.file(id)).toEqual(bushJob());
    await shop.discard(id);
    expect(shop.list()).toEqual([]);
    expect((await newShop()).list()).toEqual([]);
    expect(await shop.file(id)).toHaveProperty('message');
  });

  it('searches title block, names, labels and materials without case and accents, and sorts', async () => {
    const shop = await newShop();
    await shop.create({ ...bushJob(), title: { title: 'Säge 10', customer: 'the mill' } });
    await shop.create({ ...bushJob(), title: { title: 'Säge 9' }, template: true });
    const titles = (query: string, wanted = {}) => shop.find(query, wanted).map((row) => row.title.title);
    expect(titles('SAGE mill')).toEqual(['Säge 10']);
    expect(titles('bronze outside_d')).toEqual([]);
    expect(titles('bronze bush_od', { sort: 'title' })).toEqual(['Säge 9', 'Säge 10']);
    expect(titles('', { template: true })).toEqual(['Säge 9']);
    expect(titles('', { tags: ['bush'] })).toEqual([]);
  });

  it('keeps revisions as files, and the count of checks beside the sheet', async () => {
    const shop = await newShop();
    const id = await shop.create(bushJob());
    const sheet = opened(await shop.open(id));
    await shop.revise(id, 'before cutting');
    sheet.document.setEntry('c3', '2.26 in');
    expect(await shop.revise(id, 'after cutting')).toMatchObject({ n: 2, label: 'after cutting' });
    await shop.noteChecks(id, { holds: 3, misses: 1 });
    const again = await newShop();
    const revisions = await again.revisions(id);
    expect(revisions.map(({ label }) => label)).toEqual(['before cutting', 'after cutting']);
    expect(revisions[0]!.text).toBe(exportText(bushJob()));
    expect(revisions[0]!.fingerprint).not.toBe(revisions[1]!.fingerprint);
    expect(again.row(id)!.checks).toMatchObject({
      counts: { holds: 3, misses: 1 },
      fingerprint: revisions[1]!.fingerprint,
    });
  });

  it('puts many updates together without losing one, also with another tab writing', async () => {
    const [here, there] = [await newShop(), await newShop()];
    const id = await here.create(bushJob());
    const [a, b] = [opened(await here.open(id)), opened(await there.open(id))];
    for (let n = 0; n < 130; n++) {
      a.document.setEntry('c3', `${n} in`);
      b.document.setField('c6', 'note', `${n}`);
      await Promise.all([a.retry(), b.retry()]);
    }
    expect((await here.vault.updates(id)).updates.length).toBeLessThan(100);
    const file = await (await newShop()).file(id);
    expect(file).toMatchObject({ cells: { 2: { entry: '129 in' }, 5: { note: '129' } } });
  });
});

describe('where nothing can be kept', () => {
  it('a full disk is said at once, nothing typed is lost, and it is saved when there is room', async () => {
    const shop = await newShop();
    const id = await shop.create(bushJob());
    const sheet = opened(await shop.open(id));
    sheet.document.setEntry('c3', '2.25 in');
    await sheet.retry();
    const full = refuseWrites();
    sheet.document.setEntry('c3', '2.26 in');
    await sheet.retry();
    expect(sheet.state()).toMatchObject({
      state: 'full',
      message: expect.stringContaining('Save the sheet to a file'),
    });
    expect(await (await newShop()).file(id)).toMatchObject({ cells: { 2: { entry: '2.25 in' } } });

    // Left and opened again, it still has what could not be saved.
    await sheet.close();
    expect(opened(await shop.open(id)).document.cell('c3')!.entry).toBe('2.26 in');
    full.mockRestore();
    sheet.document.setField('c3', 'note', 'room again');
    await until(() => sheet.state().state === 'saved');
    expect(await (await newShop()).file(id)).toMatchObject({
      cells: { 2: { entry: '2.26 in', note: 'room again' } },
    });
  });

  it('a disk that is full for everybody is called full, also while the database cannot even be opened', async () => {
    const shop = await newShop();
    const sheet = opened(await shop.open(await shop.create(bushJob())));
    const broken = refuseWrites(
      'AbortError',
      'Connection is closing because of: IO error: FILE_ERROR_NO_SPACE',
    );
    sheet.document.setEntry('c3', '2.26 in');
    await sheet.retry();
    expect(sheet.state().state).toBe('full');
    broken.mockRestore();
    refuseWrites('UnknownError', 'Internal error opening backing store');
    await sheet.retry();
    expect(sheet.state().state).toBe('full');
  });

  it('a sheet made while the disk is full opens, is listed and says so', async () => {
    const shop = await newShop();
    refuseWrites();
    const id = await shop.create(bushJob());
    const sheet = opened(await shop.open(id));
    expect(sheet.state().state).toBe('full');
    expect(shop.find('countershaft')).toHaveLength(1);
    expect(sheet.document.toFile()).toEqual(bushJob());
  });

  it('an aborted transaction leaves all that was saved before it, and the next one brings its edit', async () => {
    const shop = await newShop();
    const id = await shop.create(bushJob());
    const sheet = opened(await shop.open(id));
    sheet.document.setEntry('c3', '2.25 in');
    await sheet.retry();
    const put = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementationOnce(function (
      this: IDBObjectStore,
      ...args
    ) {
      const request = put.apply(this, args);
      this.transaction.abort();
      return request;
    });
    sheet.document.setEntry('c3', '2.26 in');
    await sheet.retry();
    expect(sheet.state().state).toBe('unsaved');
    expect(await (await newShop()).file(id)).toMatchObject({ cells: { 2: { entry: '2.25 in' } } });
    await sheet.retry();
    expect(sheet.state().state).toBe('saved');
    expect(await (await newShop()).file(id)).toMatchObject({ cells: { 2: { entry: '2.26 in' } } });
  });

  it('a database that fails to open, never answers or is not there gives a shop in memory that says so', async () => {
    vi.spyOn(indexedDB, 'open').mockImplementationOnce(() => {
      throw new DOMException('denied', 'SecurityError');
    });
    const refused = await newShop();
    expect(refused.state).toMatchObject({
      state: 'refused',
      message: expect.stringContaining('private window'),
    });

    vi.spyOn(indexedDB, 'open').mockImplementationOnce(() =>
      Object.assign(Object.create(IDBOpenDBRequest.prototype), { addEventListener() {} }),
    );
    const silent = await openShop(printer, { patience: 20 });
    expect(silent.state).toMatchObject({
      state: 'refused',
      message: expect.stringContaining('does not answer'),
    });

    vi.stubGlobal('indexedDB', undefined);
    const missing = await openShop(printer);
    vi.unstubAllGlobals();
    expect(missing.state).toMatchObject({ state: 'refused' });

    for (const shop of [refused, silent, missing]) {
      const id = await shop.create(bushJob());
      const sheet = opened(await shop.open(id));
      expect(sheet.state().state).toBe('refused');
      sheet.document.setEntry('c3', '2.26 in');
      await sheet.close();
      expect(sheet.state().state).toBe('refused');
      expect(await shop.file(id)).toMatchObject({ cells: { 2: { entry: '2.26 in' } } });
      await shop.close();
    }
  });

  it('a connection the browser has closed is opened again', async () => {
    const shop = await newShop();
    const id = await shop.create(bushJob());
    shop.vault.close();
    const sheet = opened(await shop.open(id));
    sheet.document.setEntry('c3', '2.26 in');
    await sheet.close();
    expect(sheet.state().state).toBe('saved');
  });

  it('a damaged sheet is left as it is and named, the others open', async () => {
    const shop = await newShop();
    const [bad, good] = [await shop.create(bushJob()), await shop.create(bushJob())];
    const { base } = await shop.vault.updates(bad);
    const update = new Uint8Array([9, 9, 9, 255, 255]);
    await shop.vault.append(bad, { update, base, whole: () => update }, (row) => row);
    expect(await shop.open(bad)).toMatchObject({ message: expect.stringContaining('damaged') });
    expect((await shop.vault.updates(bad)).updates).toHaveLength(2);
    expect(await shop.file(good)).toEqual(bushJob());
  });
});
