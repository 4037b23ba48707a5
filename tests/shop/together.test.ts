import { join } from 'node:path';
import pg from 'pg';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { covers, type Lost, sheetDocument } from '../../src/document/sharing/wire.ts';
import { readBackup } from '../../src/shop/backup/read.ts';
import { writeBackup } from '../../src/shop/backup/write.ts';
import { Keys } from '../../src/shop/store/keys.ts';
import { Device, dropFolder, newFolder, openStore, type Served, served } from './served.ts';
import { haveServices, type Services, services } from './services.ts';

/** Redis and PostgreSQL are installed by `npm test` where that is possible; where not, it says so and leaves this out. */
describe.skipIf(!haveServices)('two servers over one Redis and one PostgreSQL', () => {
  let with_: Services | undefined;
  let servers: Served[] = [];
  const devices: Device[] = [];
  let sheets = 0;
  let name = '';

  beforeAll(async () => {
    with_ = await services();
    // A database is made first: on a busy machine that takes longer than a hook may by itself.
  }, 60_000);
  afterAll(() => with_?.stop());
  afterEach(async () => {
    for (const device of devices.splice(0)) device.close();
    for (const server of servers.splice(0)) {
      await server.stop();
      dropFolder(server.folder);
    }
  });

  const begin = async (count = 2): Promise<string> => {
    name = sheetDocument(`s${++sheets}`);
    servers = await Promise.all(
      Array.from({ length: count }, () => served({ redis: with_!.redis, postgres: with_!.postgres })),
    );
    for (const server of servers) await expect.poll(() => server.sync.health().together).toBe(true);
    return servers[0]!.key();
  };
  const at = (server: number, key: string): Device => {
    const one = new Device(servers[server]!.port, key, name);
    devices.push(one);
    return one;
  };
  const isStored = async (one: Device) => {
    const mark = one.ask();
    await expect.poll(() => one.stored?.mark).toBe(mark);
    expect(covers(one.stored!, Y.encodeStateVector(one.doc))).toBe(true);
  };
  const kept = async () => {
    const doc = new Y.Doc();
    for (const update of await servers[0]!.store.load(name)) Y.applyUpdate(doc, update);
    return doc.getMap('cells').toJSON() as Record<string, Record<string, unknown>>;
  };
  const others = (one: Device) =>
    [...one.provider.awareness!.getStates()].flatMap(([client, state]) =>
      client === one.doc.clientID || Object.keys(state).length === 0 ? [] : [state],
    );

  it('a key made at one opens at the other, and edits, presence and lost values go across', async () => {
    const key = await begin();
    const [desk, phone] = [at(0, key), at(1, key)];
    desk.write('a', 'entry', '2.25 in');
    await expect.poll(() => phone.read('a', 'entry')).toBe('2.25 in');
    phone.write('a', 'entry', '2.26 in');
    await expect.poll(() => desk.read('a', 'entry')).toBe('2.26 in');
    phone.provider.awareness!.setLocalState({ device: 'Phone', line: 'a' });
    await expect.poll(() => others(desk)).toEqual([{ device: 'Phone', line: 'a' }]);
    phone.socket.disconnect();
    await expect.poll(() => others(desk)).toEqual([]);
    phone.write('a', 'entry', '3 in');
    desk.write('a', 'entry', '4 in');
    await isStored(desk);
    void phone.socket.connect();
    const told = (one: Device) =>
      one.said.flatMap((said) => (said.type === 'lost' ? [(said as Lost).lost] : []));
    await expect.poll(() => told(desk)).toHaveLength(1);
    await expect.poll(() => told(phone)).toEqual(told(desk));
    await isStored(phone);
    const { entry } = (await kept()).a!;
    expect([entry, ...told(desk)].sort()).toEqual(['3 in', '4 in']);
  });

  it('what is written while Redis is away is at both when it is back', async () => {
    const key = await begin();
    const [desk, phone] = [at(0, key), at(1, key)];
    desk.write('a', 'entry', '1 in');
    await expect.poll(() => phone.read('a', 'entry')).toBe('1 in');
    await with_!.redisDown();
    for (const server of servers) await expect.poll(() => server.sync.health().together).toBe(false);
    desk.write('b', 'entry', '2 in');
    phone.write('c', 'entry', '3 in');
    phone.doc.transact(() => phone.cells().get('a')!.delete('entry'));
    // Storing needs no Redis.
    await isStored(desk);
    await isStored(phone);
    expect(phone.read('b', 'entry')).toBeUndefined();
    await with_!.redisUp();
    await expect.poll(() => phone.read('b', 'entry')).toBe('2 in');
    await expect.poll(() => desk.read('c', 'entry')).toBe('3 in');
    await expect.poll(() => desk.cells().get('a')?.has('entry')).toBe(false);
    const all = { a: {}, b: { entry: '2 in' }, c: { entry: '3 in' } };
    expect(await kept()).toEqual(all);
    expect(desk.cells().toJSON()).toEqual(all);
  });

  it('who opens a sheet while another writes it misses nothing, and merging loses nothing', async () => {
    const key = await begin();
    const desk = at(0, key);
    await expect.poll(() => desk.provider.isSynced).toBe(true);
    let n = 0;
    const writing = setInterval(() => desk.write('a', `f${n++}`, n), 8);
    const phones: Device[] = [];
    for (let i = 0; i < 3; i += 1) {
      const phone = at(1, key);
      phones.push(phone);
      await expect.poll(() => phone.provider.isSynced).toBe(true);
      await servers[i % 2]!.store.merge(name, 2);
    }
    clearInterval(writing);
    for (const phone of phones) await expect.poll(() => phone.cells().get('a')?.size).toBe(n);
    await isStored(phones[0]!);
    expect(Object.keys((await kept()).a!)).toHaveLength(n);
  });

  it('a backup is taken of the one database and of the other kind, and each takes it in', async () => {
    const key = await begin();
    const desk = at(0, key);
    desk.write('a', 'entry', '2.25 in');
    await isStored(desk);
    const [{ folder, store }] = servers as [Served];
    const lost = [{ item: 'one', place: 'a entry 1', cell: 'a', key: 'entry', lost: '1 mm', kept: '2 mm' }];
    await store.append([{ document: name, lost }]);
    const file = join(folder, 'shop.backup');
    expect(await writeBackup(store.database, file)).toBeUndefined();
    expect(await readBackup(store.database, file)).toMatch(/has sheets already/);
    await new Promise<void>((done, failed) => {
      const client = new pg.Client(with_!.postgres);
      client
        .connect()
        .then(() => client.query('CREATE DATABASE another'))
        .then(() => client.end())
        .then(done, failed);
    });
    const there = with_!.postgres.replace(/\/postgres$/, '/another');
    for (const postgres of [there, undefined]) {
      const other = await openStore(newFolder(), postgres);
      const documents = await readBackup(other.database, file);
      expect(documents).toBe((await store.documents()).length);
      const plain = (rows: Uint8Array[]) => rows.map((row) => [...row]);
      expect(plain(await other.load(name))).toEqual(plain(await store.load(name)));
      expect(await other.lost(name)).toEqual(await store.lost(name));
      expect(await new Keys(other.database).rightsOf(key)).toMatchObject({ readOnly: false });
      // What comes next has a number of its own.
      const [told] = await other.append([
        { document: name, lost: [{ ...lost[0]!, item: 'two', place: 'b' }] },
      ]);
      expect(told![0]!.lost.n).toBeGreaterThan((await store.lost(name)).at(-1)!.lost.n);
      await other.database.close();
    }
  });

  it('what another key writes as a device of the other server is left out', async () => {
    const key = await begin();
    const guest = await servers[1]!.key({ label: 'a forger' });
    const desk = at(0, key);
    await expect.poll(() => desk.provider.isSynced).toBe(true);
    const forger = at(1, guest);
    desk.write('a', 'entry', '2.25 in');
    await isStored(desk);
    await expect.poll(() => forger.read('a', 'entry')).toBe('2.25 in');
    forger.doc.clientID = desk.doc.clientID;
    forger.write('a', 'entry', '9 in');
    forger.ask();
    await expect.poll(() => forger.stored?.mark).toBe(1);
    expect((await kept()).a).toEqual({ entry: '2.25 in' });
    desk.write('a', 'entry', '2.26 in');
    await isStored(desk);
    expect((await kept()).a).toEqual({ entry: '2.26 in' });
  });

  it('a key that is ended at one closes what is open at the other', async () => {
    await begin();
    const label = 'the other shop';
    const phone = at(1, await servers[0]!.key({ label }));
    await expect.poll(() => phone.provider.isSynced).toBe(true);
    const record = (await servers[0]!.keys.list()).find((one) => one.label === label);
    await servers[0]!.keys.end(record!.id);
    // Every server looks now and then; here it is made to.
    await servers[1]!.keys.list();
    await expect.poll(() => phone.refusal).toBe('key-ended');
  });
});
