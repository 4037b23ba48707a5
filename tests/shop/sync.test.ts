import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { covers, sheetDocument } from '../../src/document/sharing/wire.ts';
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

const device = (key: string, name = SHEET, doc = new Y.Doc()): Device => {
  const one = new Device(server.port, key, name, doc);
  devices.push(one);
  return one;
};
const synced = (one: Device) => expect.poll(() => one.provider.isSynced).toBe(true);

const storedDoc = async (name = SHEET): Promise<Y.Doc> => {
  const doc = new Y.Doc();
  for (const update of await server.store.load(name)) Y.applyUpdate(doc, update);
  return doc;
};

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
    const mark = phone.ask();
    await expect.poll(() => phone.stored?.mark).toBe(mark);
    expect(covers(phone.stored!, Y.encodeStateVector(phone.doc))).toBe(true);
    const kept = await storedDoc();
    expect(kept.getMap('cells').toJSON()).toEqual({ a: { entry: '2.26 in' } });
    await expect.poll(() => phone.provider.unsyncedChanges).toBe(0);
  });
});
