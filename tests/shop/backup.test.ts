import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import * as Y from 'yjs';
import { readBackup } from '../../src/shop/backup/read.ts';
import { writeBackup } from '../../src/shop/backup/write.ts';
import { Keys } from '../../src/shop/store/keys.ts';
import { openSqlite } from '../../src/shop/store/sqlite.ts';
import { Store } from '../../src/shop/store/store.ts';

let folder: string;
const stores: Store[] = [];
const open = async (name: string): Promise<Store> => {
  const store = new Store(await openSqlite(join(folder, name)));
  await store.prepare();
  stores.push(store);
  return store;
};
const update = (text: string): Uint8Array => {
  const doc = new Y.Doc();
  doc.getMap('sheet').set('title', text);
  return Y.encodeStateAsUpdate(doc);
};
let store: Store;
let file: string;
let key: string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fitwright-backup-'));
  store = await open('one.sqlite');
  await store.append([
    { document: 'sheet.a', update: update('α') },
    { document: 'sheet.b', update: update('b') },
    {
      document: 'sheet.a',
      update: update('more'),
      lost: [{ item: 'one', place: 'c1 entry 1', cell: 'c1', key: 'entry', lost: '1 mm', kept: '2 mm' }],
    },
  ]);
  key = (await new Keys(store.database).make({ label: 'desk', readOnly: false })).key;
  file = join(folder, 'shop.backup');
  expect(await writeBackup(store.database, file)).toBeUndefined();
});
afterAll(async () => {
  for (const { database } of stores) await database.close();
  rmSync(folder, { recursive: true });
});

describe('a backup of a shop', () => {
  test('taken in elsewhere, everything is as it was, keys too', async () => {
    const other = await open('two.sqlite');
    expect(await readBackup(other.database, file)).toBe(2);
    for (const document of ['sheet.a', 'sheet.b'])
      expect(await other.load(document)).toEqual(await store.load(document));
    expect(await other.lost('sheet.a')).toEqual(await store.lost('sheet.a'));
    expect(await new Keys(other.database).rightsOf(key)).toMatchObject({ label: 'desk', readOnly: false });
    // What comes next has a number of its own.
    const lost = [{ item: 'two', place: 'c1 entry 2', cell: 'c1', key: 'entry', lost: 1, kept: 2 }];
    const [told] = await other.append([{ document: 'sheet.a', update: update('next'), lost }]);
    expect(told?.[0]?.lost.n).toBeGreaterThan((await store.lost('sheet.a'))[0]!.lost.n);
  });

  test('holds no key in clear, is read by its owner alone, and overwrites nothing', async () => {
    expect(gunzipSync(readFileSync(file)).toString()).not.toContain(key);
    if (process.platform !== 'win32') expect(statSync(file).mode & 0o077).toBe(0);
    expect(await writeBackup(store.database, file)).toMatch(/is there already/);
    expect(await writeBackup(store.database, join(folder, 'none', 'x'))).toMatch(/was not written/);
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  });

  test('is never mixed with what is there', async () => {
    expect(await readBackup(store.database, file)).toMatch(/has sheets already/);
  });

  test('damaged, cut off or foreign it is refused in words, and nothing of it is taken in', async () => {
    const other = await open('three.sqlite');
    const whole = readFileSync(file);
    const lines = gunzipSync(whole).toString().trimEnd().split('\n');
    const flipped = Buffer.from(whole);
    flipped[flipped.length >> 1] = flipped[flipped.length >> 1]! ^ 0xff;
    const bad = join(folder, 'bad.backup');
    for (const bytes of [
      flipped,
      whole.subarray(0, whole.length - 20),
      Buffer.from('no backup'),
      Buffer.alloc(0),
      gzipSync(lines.slice(0, -1).join('\n')),
      gzipSync([...lines.slice(0, 2), ...lines.slice(3)].join('\n')),
      gzipSync(lines.join('\n').replace('"version":1', '"version":9')),
      gzipSync(lines.join('\n').replace('"table":"updates"', '"table":"sqlite_master"')),
      gzipSync(lines.join('\n').replace('"document":', '"document) VALUES (1); --":')),
      gzipSync('{"format":"another"}\n{"end":0}\n'),
    ]) {
      writeFileSync(bad, bytes);
      expect(await readBackup(other.database, bad)).toMatch(/^.*bad\.backup was not taken in: .+\.$/s);
      expect(await other.documents()).toEqual([]);
    }
  });
});
