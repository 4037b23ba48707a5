import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import type { KeyWish, Lost } from '../../src/document/sharing/wire.ts';
import {
  covers,
  LIST_DOCUMENT,
  sheetDocument,
  tokenOf,
  WIRE_EDITION,
} from '../../src/document/sharing/wire.ts';
import { Device, dropFolder, type Served, served } from './served.ts';

let server: Served;
const devices: Device[] = [];
const SHEET = sheetDocument('saw-arbor');

beforeEach(async () => {
  server = await served();
});
afterEach(async () => {
  for (const device of devices.splice(0)) device.close();
  await server.stop();
  dropFolder(server.folder);
});

const device = (key: string, name = SHEET, doc?: Y.Doc, at = server): Device => {
  const one = new Device(at.port, key, name, doc);
  devices.push(one);
  return one;
};
const synced = (one: Device) => expect.poll(() => one.provider.isSynced).toBe(true);
const away = async (one: Device) => {
  await synced(one);
  one.socket.disconnect();
  await expect.poll(() => one.provider.isSynced).toBe(false);
};
const refused = (one: Device) => expect.poll(() => one.refusal);
const isStored = async (one: Device) => {
  const mark = one.ask();
  await expect.poll(() => one.stored?.mark).toBe(mark);
  expect(covers(one.stored!, Y.encodeStateVector(one.doc))).toBe(true);
};
const storedCells = async (name = SHEET): Promise<unknown> => {
  const doc = new Y.Doc();
  for (const update of await server.store.load(name)) Y.applyUpdate(doc, update);
  return doc.getMap('cells').toJSON();
};
const lostOf = (one: Device): Lost[] => one.said.filter((said) => said.type === 'lost');

describe('a client of Yjs', () => {
  /** Two keys, and a device of the first that wrote one line, which the other has. */
  const begun = async () => {
    const [key, guest] = [await server.key(), await server.key({ label: 'the other shop' })];
    const desk = device(key);
    await synced(desk);
    desk.write('a', 'entry', '2.25 in');
    await isStored(desk);
    const other = device(guest);
    await expect.poll(() => other.read('a', 'entry')).toBe('2.25 in');
    return { key, guest, desk, other };
  };

  it.each(['at once', 'after the server was away'])(
    'is of the key that wrote as it: what another key writes as it, %s, is neither stored nor passed on, and the owner loses nothing',
    async (when) => {
      const { desk, other } = await begun();
      if (when !== 'at once') await away(other);
      const own = other.doc.clientID;
      other.doc.clientID = desk.doc.clientID;
      other.write('a', 'entry', '9 in');
      other.doc.clientID = own;
      if (when !== 'at once') {
        void other.socket.connect();
        await synced(other);
      }
      const mark = other.ask();
      await expect.poll(() => other.stored?.mark).toBe(mark);
      expect(desk.read('a', 'entry')).toBe('2.25 in');
      expect(await storedCells()).toEqual({ a: { entry: '2.25 in' } });
      // The very number that was forged.
      desk.write('a', 'entry', '2.26 in');
      await isStored(desk);
      expect(await storedCells()).toEqual({ a: { entry: '2.26 in' } });
    },
  );

  it('that was only told of is of who told it, and a device that shows the key it had before goes on', async () => {
    const { key, guest, desk, other } = await begun();
    const phone = device(key);
    await synced(phone);
    phone.provider.awareness!.setLocalState({ device: 'Phone', edits: phone.doc.clientID });
    await expect.poll(() => other.provider.awareness!.getStates().size).toBeGreaterThan(1);
    await away(phone);
    const own = other.doc.clientID;
    other.doc.clientID = phone.doc.clientID;
    other.write('b', 'entry', '9 in');
    other.doc.clientID = own;
    phone.write('b', 'entry', '3 in');
    const mark = other.ask();
    await expect.poll(() => other.stored?.mark).toBe(mark);
    // It has another key by now: what it wrote is taken where it shows the one it had.
    const anew = await server.key({ label: 'a new link' });
    const again = device(tokenOf(anew, [key]), SHEET, phone.doc);
    await synced(again);
    await isStored(again);
    await expect.poll(() => desk.read('b', 'entry')).toBe('3 in');
    expect(guest).not.toBe(anew);
  });

  it('what builds on what was left out is taken once that has come from its owner', async () => {
    const { desk, other } = await begun();
    await away(desk);
    desk.write('a', 'entry', '2.27 in');
    // The other hears of it by another way than this server, and goes on from there.
    Y.applyUpdate(other.doc, Y.encodeStateAsUpdate(desk.doc));
    other.write('a', 'entry', '2.28 in');
    const mark = other.ask();
    await expect.poll(() => other.stored?.mark).toBe(mark);
    expect(await storedCells()).toEqual({ a: { entry: '2.25 in' } });
    void desk.socket.connect();
    await expect.poll(() => desk.read('a', 'entry')).toBe('2.28 in');
    await isStored(desk);
    expect(await storedCells()).toEqual({ a: { entry: '2.28 in' } });
  });
});

describe('what is stored', () => {
  it('and is not as it was written, shuts its sheet alone, in words; a lost value that cannot be read shuts nothing', async () => {
    const key = await server.key();
    const desk = device(key);
    desk.write('a', 'entry', '2.25 in');
    await isStored(desk);
    desk.close();
    const { database } = server.store;
    await database.transaction((run) =>
      run("INSERT INTO lost (document, place, item, content) VALUES (?, 'a', 'b', '{')", SHEET),
    );
    await server.stop();
    server = await served({ folder: server.folder });
    const again = device(key);
    await synced(again);
    expect(again.read('a', 'entry')).toBe('2.25 in');
    again.close();
    // One bit of a text, which Yjs would read all the same.
    const [row] = await server.store.load(SHEET);
    const at = Buffer.from(row!).indexOf('2.25');
    const bad = new Uint8Array(row!);
    bad[at]! ^= 1;
    await server.store.database.transaction((run) =>
      run('UPDATE updates SET bytes = ? WHERE document = ?', bad, SHEET),
    );
    await server.stop();
    server = await served({ folder: server.folder });
    await refused(device(key)).toBe('sheet-unreadable');
    const other = device(key, sheetDocument('another'));
    other.write('a', 'entry', '1 in');
    await isStored(other);
  });
});

describe('two devices on one sheet', () => {
  it('see each other’s edits, and are told when these are stored', async () => {
    const key = await server.key();
    const [desk, phone] = [device(key), device(key)];
    desk.write('a', 'entry', '2.25 in');
    await synced(desk);
    await synced(phone);
    await expect.poll(() => phone.read('a', 'entry')).toBe('2.25 in');
    phone.write('a', 'entry', '2.26 in');
    await expect.poll(() => desk.read('a', 'entry')).toBe('2.26 in');
    await isStored(phone);
    expect(await storedCells()).toEqual({ a: { entry: '2.26 in' } });
    await expect.poll(() => phone.provider.unsyncedChanges).toBe(0);
  });

  it.each([
    ['the one that stood', 1, 2],
    ['the one that came', 2, 1],
  ])('who wrote one field apart are both told of %s', async (_, first, second) => {
    const key = await server.key();
    // Of two who write at once the greater client of Yjs stands.
    const docs = [new Y.Doc(), new Y.Doc()] as const;
    [docs[0].clientID, docs[1].clientID] = [first, second];
    const desk = device(key, SHEET, docs[0]);
    desk.write('a', 'entry', '2.25 in');
    desk.write('a', 'label', 'bore');
    await isStored(desk);
    const phone = device(key, SHEET, docs[1]);
    await synced(phone);
    await away(phone);
    desk.write('a', 'entry', '2.26 in');
    desk.write('a', 'entry', '2.27 in');
    phone.write('a', 'entry', '2.28 in');
    phone.write('a', 'entry', '2.29 in');
    phone.write('a', 'label', 'bore');
    await isStored(desk);
    void phone.socket.connect();
    await synced(phone);
    const [kept, lost] = first > second ? ['2.27 in', '2.29 in'] : ['2.29 in', '2.27 in'];
    for (const one of [desk, phone]) {
      await expect.poll(() => one.read('a', 'entry')).toBe(kept);
      await expect
        .poll(() => lostOf(one))
        .toEqual([{ type: 'lost', n: expect.any(Number), cell: 'a', key: 'entry', lost, kept }]);
    }
    // And who comes later, or after the server was down.
    const late = device(key);
    await expect.poll(() => lostOf(late)).toEqual(lostOf(desk));
  });

  it('what one wrote and another overwrote is told, though the server was killed before it had stored either', async () => {
    const key = await server.key();
    const [desk, phone] = [device(key), device(key)];
    await synced(desk);
    desk.write('a', 'label', 'Bore');
    await expect.poll(() => phone.read('a', 'label')).toBe('Bore');
    for (const one of [desk, phone]) await away(one);
    // Nothing is stored any more, and so nothing passed on.
    const { append } = server.store;
    const kept: Array<() => void> = [];
    server.store.append = () => new Promise((_, reject) => void kept.push(() => reject(new Error('killed'))));
    desk.write('a', 'entry', '2.25 in');
    phone.write('a', 'entry', '2.26 in');
    for (const one of [desk, phone]) void one.socket.connect();
    await expect.poll(() => server.sync.health().waiting).toBe(2);
    for (const one of [desk, phone]) one.close();
    server.store.append = append;
    for (const end of kept) end();
    // One that has nothing of it, as after the kill.
    const after = await served();
    try {
      const again = await after.key();
      const both = [desk, phone].map(({ doc }) => device(again, SHEET, doc, after));
      await expect.poll(() => both.every((one) => lostOf(one).length === 1)).toBe(true);
      const [one, other] = both.map((each) => [each.read('a', 'entry'), lostOf(each)[0]!.lost].sort());
      expect(one).toEqual(['2.25 in', '2.26 in']);
      expect(other).toEqual(one);
      for (const one of both) one.close();
    } finally {
      await after.stop();
      dropFolder(after.folder);
    }
  });

  it('a reading that was added while another put a text in place of the list is told', async () => {
    const key = await server.key();
    const [desk, phone] = [device(key), device(key)];
    const reading = (text: string, at: string) => ({ place: 1, at, text, unit: 'in' });
    desk.write('a', 'entry', { list: ' in' });
    desk.write('a', 'entry#r1', reading('2.25', 'a'));
    await synced(phone);
    await expect.poll(() => phone.read('a', 'entry#r1')).toBeDefined();
    await away(phone);
    phone.write('a', 'entry#r2', reading('2.26', 'b'));
    desk.doc.transact(() => {
      desk.cells().get('a')!.delete('entry#r1');
      desk.cells().get('a')!.set('entry', '=2 * od');
    });
    await isStored(desk);
    void phone.socket.connect();
    await expect
      .poll(() => lostOf(desk))
      .toMatchObject([{ cell: 'a', key: 'entry', lost: '2.26 in', kept: '=2 * od' }]);
  });

  it('edits made before the answer of the server has come are all taken', async () => {
    const key = await server.key();
    const doc = new Y.Doc();
    const phone = device(key, SHEET, doc);
    await synced(phone);
    await away(phone);
    for (let i = 0; i < 20; i += 1) phone.write(`c${i}`, 'entry', `${i} in`);
    phone.provider.on('authenticated', () => phone.write('late', 'entry', '1 in'));
    void phone.socket.connect();
    await synced(phone);
    await isStored(phone);
    expect(Object.keys((await storedCells()) as object)).toHaveLength(21);
  });

  it('see where the other is, and that it has left', async () => {
    const key = await server.key();
    const [desk, phone] = [device(key), device(key)];
    await synced(desk);
    await synced(phone);
    const others = (one: Device) =>
      [...one.provider.awareness!.getStates()].flatMap(([client, state]) =>
        client === one.doc.clientID || Object.keys(state).length === 0 ? [] : [state],
      );
    phone.provider.awareness!.setLocalState({ device: 'Phone', line: 'a', more: 'x'.repeat(5000) });
    await expect.poll(() => others(desk)).toEqual([{ device: 'Phone', line: 'a' }]);
    // It speaks for itself alone.
    const { awareness } = desk.provider;
    awareness!.meta.set(phone.doc.clientID, { clock: 99, lastUpdated: Date.now() });
    awareness!.states.set(phone.doc.clientID, { device: 'Desk' });
    desk.provider.awarenessUpdateHandler({ added: [phone.doc.clientID], updated: [], removed: [] }, 'x');
    const third = device(key);
    await expect.poll(() => others(third)).toEqual([{ device: 'Phone', line: 'a' }]);
    phone.socket.disconnect();
    await expect.poll(() => others(third)).toEqual([]);
    void phone.socket.connect();
    await synced(phone);
    phone.provider.awareness!.setLocalState({ device: 'Phone' });
    await expect.poll(() => others(third)).toEqual([{ device: 'Phone' }]);
  });

  it('a device is told of by numbers that are its own or nobody’s', async () => {
    const desk = device(await server.key());
    const guest = device(await server.key({ label: 'the other shop' }));
    for (const one of [desk, guest]) await synced(one);
    desk.write('a', 'entry', '2.25 in');
    await isStored(desk);
    const number = desk.doc.clientID;
    guest.provider.awareness!.setLocalState({ device: 'Guest', edits: number, edited: [number, 5] });
    await expect
      .poll(() => [...desk.provider.awareness!.getStates().values()])
      .toContainEqual({ device: 'Guest', edited: [5] });
  });

  it('a sheet whose sharing has ended lets nobody in, by whatever key, and has everything once it is shared again', async () => {
    const key = await server.key();
    const list = device(key, LIST_DOCUMENT);
    const [desk, phone] = [device(key), device(key)];
    const guest = device(await server.key({ sheet: 'saw-arbor' }));
    const shared = { title: 'Saw arbor', template: false, by: 'Desk', since: Date.now() - 3_600_000 };
    list.doc.getMap('shared').set('saw-arbor', shared);
    desk.write('a', 'entry', '2.25 in');
    await isStored(desk);
    await away(phone);
    phone.write('b', 'entry', '2.26 in');
    list.doc.getMap('shared').set('saw-arbor', { ...shared, ended: true });
    for (const one of [desk, guest]) await refused(one).toBe('sharing-ended');
    void phone.socket.connect();
    await refused(phone).toBe('sharing-ended');
    expect(await storedCells()).toEqual({ a: { entry: '2.25 in' } });
    expect(phone.read('b', 'entry')).toBe('2.26 in');
    await isStored(list);
    // Nobody has had the list open for a while: it is known all the same.
    list.close();
    await refused(device(key)).toBe('sharing-ended');
    const again = device(key, LIST_DOCUMENT);
    await synced(again);
    again.doc.getMap('shared').set('saw-arbor', shared);
    await isStored(again);
    const back = device(key, SHEET, phone.doc);
    await synced(back);
    await isStored(back);
    expect(await storedCells()).toEqual({ a: { entry: '2.25 in' }, b: { entry: '2.26 in' } });
  });
});

describe('a key', () => {
  const cases: Array<[string, Partial<KeyWish> | string, string, string]> = [
    ['that is not one of the server', 'W'.repeat(22), SHEET, 'key-unknown'],
    ['that is none', '1 ../../etc', SHEET, 'key-unknown'],
    ['of an older page', `${WIRE_EDITION - 1} ${'W'.repeat(22)}`, SHEET, 'page-old'],
    ['of a newer page', `${WIRE_EDITION + 1} ${'W'.repeat(22)}`, SHEET, 'server-old'],
    ['for another sheet', { sheet: 'pump' }, SHEET, 'key-other-sheet'],
    ['for one sheet, at the list', { sheet: 'saw-arbor' }, LIST_DOCUMENT, 'key-other-sheet'],
    ['at what is no document', {}, '../keys', 'key-other-sheet'],
  ];
  it.each(cases)('%s is refused', async (_, wish, name, refusal) => {
    const writer = device(await server.key());
    writer.write('a', 'entry', '2.25 in');
    await isStored(writer);
    const one = device(typeof wish === 'string' ? wish : await server.key(wish), name);
    one.write('x', 'entry', '1 in');
    await refused(one).toBe(refusal);
    expect(one.read('a', 'entry')).toBeUndefined();
    expect(await storedCells()).toEqual({ a: { entry: '2.25 in' } });
  });

  it('for one sheet, or none, sees nothing of the shop’s own; one that only reads sees it, and changes nothing', async () => {
    const gauge = { kind: 'gauge', label: 'No. 4', inputs: { certificate: '1 um' }, by: 'Desk', since: 1 };
    const own = (one: Device) => one.doc.getMap('equipment').toJSON();
    const desk = device(await server.key(), LIST_DOCUMENT);
    desk.doc.getMap('equipment').set('e1', gauge);
    await isStored(desk);
    for (const wish of [{ sheet: 'saw-arbor' }, 'W'.repeat(22)]) {
      const one = device(typeof wish === 'string' ? wish : await server.key(wish), LIST_DOCUMENT);
      await expect.poll(() => one.refusal).toBeDefined();
      expect(own(one)).toEqual({});
    }
    const reader = device(await server.key({ readOnly: true }), LIST_DOCUMENT);
    await expect.poll(() => own(reader)).toEqual({ e1: gauge });
    reader.doc.getMap('equipment').set('e1', { ...gauge, inputs: { certificate: '9 um' } });
    await refused(reader).toBe('key-reads-only');
    const fresh = device(await server.key(), LIST_DOCUMENT);
    await expect.poll(() => own(fresh)).toEqual({ e1: gauge });
    expect(own(desk)).toEqual({ e1: gauge });
  });

  it('whose update is refused is told for which field, as far as it is known, and is taken once that is gone', async () => {
    const key = await server.key();
    const fields = (one: Device) => one.said.filter(({ type }) => type === 'refused');
    const one = device(key);
    one.write('a', 'entry', '2.25 in');
    await isStored(one);
    one.write('a', 'note', 'x'.repeat(200_001));
    await refused(one).toBe('update-refused');
    expect(fields(one)).toEqual([{ type: 'refused', cell: 'a', key: 'note' }]);
    one.write('a', 'label', 'entered since');
    const sheet = device(key);
    await synced(sheet);
    sheet.doc.getMap('sheet').set('title.title', 3);
    await refused(sheet).toBe('update-refused');
    expect(fields(sheet)).toEqual([{ type: 'refused', key: 'title.title' }]);
    const foreign = device(key);
    await synced(foreign);
    foreign.doc.getMap('other').set('a', 1);
    await refused(foreign).toBe('update-refused');
    expect(fields(foreign)).toEqual([]);
    // Made shorter, it goes with all that was entered since; the long text it was is nowhere.
    one.write('a', 'note', 'short');
    const again = device(key, SHEET, one.doc);
    await synced(again);
    await isStored(again);
    expect(again.refusal).toBeUndefined();
    expect(await storedCells()).toEqual({ a: { entry: '2.25 in', note: 'short', label: 'entered since' } });
  });

  it('that has ended closes what it had open', async () => {
    const key = await server.key();
    const one = device(key);
    await synced(one);
    const [record] = await server.keys.list();
    await server.keys.end(record!.id);
    await refused(one).toBe('key-ended');
    one.write('x', 'entry', '1 in');
    const again = device(key);
    await refused(again).toBe('key-ended');
    expect(await storedCells()).toEqual({});
  });

  it('that only reads sees what is written, and writes nothing', async () => {
    const desk = device(await server.key());
    const guest = device(await server.key({ readOnly: true, sheet: 'saw-arbor' }));
    await synced(guest);
    expect(guest.scope).toBe('readonly');
    desk.write('a', 'entry', '2.25 in');
    await expect.poll(() => guest.read('a', 'entry')).toBe('2.25 in');
    guest.write('a', 'entry', '9 in');
    await refused(guest).toBe('key-reads-only');
    await isStored(desk);
    expect(desk.read('a', 'entry')).toBe('2.25 in');
    expect(await storedCells()).toEqual({ a: { entry: '2.25 in' } });
  });
});
