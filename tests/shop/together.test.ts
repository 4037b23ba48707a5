import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { covers, type Lost, sheetDocument } from '../../src/document/sharing/wire.ts';
import { Device, dropFolder, type Served, served } from './served.ts';
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
    await expect.poll(() => one.stored?.mark, { timeout: 5000 }).toBe(mark);
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
    await expect.poll(() => phone.read('b', 'entry'), { timeout: 8000 }).toBe('2 in');
    await expect.poll(() => desk.read('c', 'entry'), { timeout: 8000 }).toBe('3 in');
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
    for (const phone of phones)
      await expect.poll(() => phone.cells().get('a')?.size, { timeout: 5000 }).toBe(n);
    await isStored(phones[0]!);
    expect(Object.keys((await kept()).a!)).toHaveLength(n);
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
