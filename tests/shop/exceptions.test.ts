import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import * as Y from 'yjs';
import { CLOSED, sheetDocument } from '../../src/document/sharing/wire.ts';
import { LIMITS } from '../../src/shop/base/limits.ts';
import { Writer } from '../../src/shop/store/writer.ts';
import { type Member, Room } from '../../src/shop/sync/room.ts';
import { Device, dropFolder, type Served, served } from './served.ts';

/** What happens where the library or the server itself ends in an exception: no message known so far makes it. */

const SHEET = sheetDocument('saw-arbor');
const OTHER = sheetDocument('pump');
/** Says that one client has two items, and ends there. */
const TORN = new Uint8Array([1, 2, 7, 0, 4]);

let server: Served;
let log: string[];
const devices: Device[] = [];

beforeEach(async () => {
  log = [];
  vi.spyOn(console, 'error').mockImplementation((line) => void log.push(String(line)));
  server = await served();
});
afterEach(async () => {
  for (const device of devices.splice(0)) device.close();
  await server.stop();
  dropFolder(server.folder);
  vi.restoreAllMocks();
});

const device = (key: string, name = SHEET): Device => {
  const one = new Device(server.port, key, name);
  devices.push(one);
  return one;
};
const isStored = async (one: Device) => {
  const mark = one.ask();
  await expect.poll(() => one.stored?.mark).toBe(mark);
};

const update = (n: number): Uint8Array => {
  const doc = new Y.Doc();
  doc.getMap('cells').set(`c${n}`, new Y.Map([['entry', `${n} in`]]));
  return Y.encodeStateAsUpdate(doc);
};

describe('a room', () => {
  const opened = async () => {
    const { store, metrics } = server;
    const told: string[] = [];
    const writer = new Writer(store, metrics, () => {});
    const tell = (_: string, kind: string) => void told.push(kind);
    const room = await Room.open(SHEET, { store, metrics, limits: LIMITS, writer, tell });
    const member = () => {
      const refusals: string[] = [];
      const sent: Uint8Array[] = [];
      const one: Member = {
        keyId: 'k',
        holds: new Set(['k']),
        ask: () => {},
        send: (frame) => sent.push(frame),
        refuse: (why) => {
          refusals.push(why);
          room.leave(one);
        },
      };
      room.enter(one);
      return { one, sent, refusals };
    };
    return { room, told, writer, member };
  };

  it.each(['beforeTransaction', 'afterTransaction', 'update'] as const)(
    'refuses the update over which the library throws (%s), stores and tells nothing of it, and takes the next',
    async (event) => {
      const { room, told, writer, member } = await opened();
      const [from, other] = [member(), member()];
      expect(room.take(update(1), from.one)).toEqual({ early: false });
      await writer.drained();
      const [sent, before] = [other.sent.length, room.shadow.state()];
      room.shadow.doc.on(event, () => {
        throw new TypeError('thrown');
      });
      expect(room.take(update(2), from.one)).toMatchObject({ refusal: 'update-refused' });
      expect(room.shadow.state()).toEqual(before);
      expect([other.sent.length, told]).toEqual([sent, ['update']]);
      expect(room.take(update(3), from.one)).toEqual({ early: false });
      await writer.drained();
      const kept = new Y.Doc();
      for (const row of await server.store.load(SHEET)) Y.applyUpdate(kept, row);
      expect(Object.keys(kept.getMap('cells').toJSON()).sort()).toEqual(['c1', 'c3']);
      room.end();
    },
  );

  it('that cannot be made anew lets everybody go and takes nothing more', async () => {
    const { room, told, writer, member } = await opened();
    const [from, other] = [member(), member()];
    room.take(update(1), from.one);
    await writer.drained();
    (room.shadow as unknown as { base: Uint8Array }).base = TORN;
    const foreign = new Y.Doc();
    foreign.getMap('cells').set('x', 'no line');
    const answer = room.take(Y.encodeStateAsUpdate(foreign), from.one);
    expect(answer).toMatchObject({ refusal: 'update-refused' });
    expect(other.refusals).toEqual(['sheet-unreadable']);
    expect(room.take(update(2), from.one)).toMatchObject({ refusal: 'update-refused' });
    room.hear('hello', new Uint8Array([0]));
    expect(told).toEqual(['update']);
    expect(log[0]).toContain(SHEET);
    room.end();
  });

  it('passes over what another server tells that is nothing', async () => {
    const { room } = await opened();
    for (const kind of ['update', 'presence', 'lost', 'hello', 'have'] as const) room.hear(kind, TORN);
    expect(room.take(update(1))).toEqual({ early: false });
    room.end();
  });
});

it('what is stored and cannot be read lets nobody in, is told, and stays as it is', async () => {
  const key = await server.key();
  await server.store.append([
    { document: SHEET, update: update(1) },
    { document: SHEET, update: TORN },
  ]);
  const rows = await server.store.load(SHEET);
  const desk = device(key);
  desk.write('a', 'entry', '2.25 in');
  await expect.poll(() => desk.refusal).toBe('sheet-unreadable');
  await expect(server.store.merge(SHEET, 1)).rejects.toThrow();
  const phone = device(key, OTHER);
  phone.write('a', 'entry', '2.26 in');
  await isStored(phone);
  expect(await server.store.load(SHEET)).toEqual(rows);
  expect(log).toEqual([expect.stringContaining(`What is stored of ${SHEET} cannot be read`)]);
});

it.each(['take', 'enter', 'takePresence', 'storedAt'] as const)(
  'an exception in the room (%s) ends the line it came over, and leaves nobody in the room',
  async (part) => {
    const key = await server.key();
    const desk = device(key);
    desk.write('a', 'entry', '2.25 in');
    await isStored(desk);
    vi.spyOn(Room.prototype, part).mockImplementationOnce(() => {
      throw new TypeError('thrown');
    });
    const phone = device(key);
    phone.provider.awareness!.setLocalState({ device: 'Phone' });
    phone.write('b', 'entry', '2.26 in');
    phone.ask();
    await expect.poll(() => phone.closedWith).toBe(CLOSED.malformed);
    phone.close();
    desk.write('a', 'entry', '2.27 in');
    await isStored(desk);
    expect(server.sync.health().connections).toBe(1);
    const doc = new Y.Doc();
    for (const row of await server.store.load(SHEET)) Y.applyUpdate(doc, row);
    expect(doc.getMap<Y.Map<unknown>>('cells').get('a')!.toJSON()).toEqual({ entry: '2.27 in' });
  },
);
