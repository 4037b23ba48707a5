import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { Metrics } from '../../src/shop/base/metrics.ts';
import type { Database } from '../../src/shop/store/database.ts';
import { Keys } from '../../src/shop/store/keys.ts';
import { openSqlite } from '../../src/shop/store/sqlite.ts';
import { Store } from '../../src/shop/store/store.ts';
import { Writer } from '../../src/shop/store/writer.ts';

const folders: string[] = [];
const open: Database[] = [];

async function storeIn(folder: string, pages?: number): Promise<Store> {
  const database = await openSqlite(join(folder, 'shop.db'), pages);
  open.push(database);
  const store = new Store(database);
  await store.prepare();
  return store;
}

const newFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'fitwright-store-'));
  folders.push(folder);
  return folder;
};

afterEach(async () => {
  for (const database of open.splice(0)) await database.close();
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});

const filled = (updates: Uint8Array[]): Y.Doc => {
  const doc = new Y.Doc();
  for (const update of updates) Y.applyUpdate(doc, update);
  return doc;
};

describe('the store in a file', () => {
  it('what two connections append and merge is all there', async () => {
    const folder = newFolder();
    const [one, two] = [await storeIn(folder), await storeIn(folder)];
    const writers = [one, two].map((store) => {
      const doc = new Y.Doc();
      const updates: Uint8Array[] = [];
      doc.on('update', (update: Uint8Array) => updates.push(update));
      for (let i = 0; i < 60; i += 1) doc.getMap('sheet').set(`${doc.clientID}-${i}`, i);
      return { store, updates };
    });
    await Promise.all(
      writers.map(async ({ store, updates }) => {
        for (const [i, update] of updates.entries()) {
          await store.append([{ document: 'sheet.a', update }]);
          if (i % 20 === 19) await store.merge('sheet.a', 2);
        }
      }),
    );
    await one.merge('sheet.a', 2);
    const rows = await two.load('sheet.a');
    expect(rows).toHaveLength(1);
    expect(filled(rows).getMap('sheet').size).toBe(120);
  });

  it('a full disk is told, and what waited is stored once there is room', async () => {
    const folder = newFolder();
    const store = await storeIn(folder, 40);
    const told: string[] = [];
    const writer: Writer = new Writer(store, new Metrics(), () => told.push(writer.state));
    let stored = 0;
    const update = Y.encodeStateAsUpdate(filled([]));
    for (let i = 0; i < 3; i += 1)
      writer.append(
        { document: 'sheet.a', update: new Uint8Array([...update, ...new Uint8Array(100_000)]) },
        () => stored++,
      );
    await expect.poll(() => told).toEqual(['full']);
    // The first went alone, and fitted; the two that came meanwhile do not.
    expect(stored).toBe(1);
    await store.database.transaction((run) => run('PRAGMA max_page_count=100000'));
    await writer.drained();
    expect(stored).toBe(3);
    expect(told).toEqual(['full', 'well']);
  });
});

describe('keys', () => {
  it('open what they may until they end, here and for who looks later', async () => {
    const folder = newFolder();
    const [one, two] = [await storeIn(folder), await storeIn(folder)];
    const ended: string[] = [];
    const here = new Keys(one.database);
    const there = new Keys(two.database);
    there.whenEnded((ids) => ended.push(...ids));
    const made = await here.make({ label: 'the other shop', readOnly: true, sheet: 'a' });
    expect(await there.rightsOf(made.key)).toMatchObject({ id: made.id, readOnly: true, sheet: 'a' });
    expect(await there.rightsOf('A'.repeat(22))).toBe('key-unknown');
    expect(await here.end(made.id)).toBe(true);
    await there.list();
    expect(ended).toEqual([made.id]);
    expect(await there.rightsOf(made.key)).toBe('key-ended');
    const raw = JSON.stringify(await one.database.transaction((run) => run('SELECT * FROM keys')));
    expect(raw).not.toContain(made.key);
  });
});
