import { afterEach, describe, expect, it } from 'vitest';
import { WebSocket } from 'ws';
import { CLOSED, SYNC_PATH, sheetDocument, tokenOf } from '../../src/document/sharing/wire.ts';
import { authFrame, sayFrame, syncFrame } from './raw.ts';
import { Device, dropFolder, type Served, served } from './served.ts';

let server: Served;
const devices: Device[] = [];
const SHEET = sheetDocument('saw-arbor');
const STRANGE = tokenOf('W'.repeat(22));

afterEach(async () => {
  for (const device of devices.splice(0)) device.close();
  await server.stop();
  dropFolder(server.folder);
});

const device = (key: string): Device => {
  const one = new Device(server.port, key, SHEET);
  devices.push(one);
  return one;
};
const isOpen = (one: Device) => expect.poll(() => one.provider.isSynced).toBe(true);

/** A socket that is no page's. @returns the code it was closed with */
const sent = (...messages: Array<Uint8Array | string>): Promise<number> =>
  new Promise((done) => {
    const socket = new WebSocket(`ws://127.0.0.1:${server.port}${SYNC_PATH}`);
    socket.on('open', () => {
      for (const message of messages) socket.send(message);
    });
    socket.on('error', () => {});
    socket.on('close', done);
  });

describe('before a key', () => {
  it('nothing else is taken, not much, and not for long', async () => {
    server = await served({ limits: { keyWithin: 200 } });
    expect(await sent(syncFrame(SHEET, 0, new Uint8Array([0])))).toBe(CLOSED.unauthenticated);
    expect(await sent(authFrame(SHEET, 'x'.repeat(20_000)))).toBe(CLOSED.unauthenticated);
    expect(await sent('hello')).toBe(CLOSED.malformed);
    // One that is slow comes back; one whose key was refused does not.
    expect(await sent()).toBe(1013);
    expect(await sent(authFrame(SHEET, STRANGE))).toBe(CLOSED.unauthenticated);
    expect(server.sync.health().documents).toBe(0);
  });

  it('few sockets of one address wait', async () => {
    server = await served({ limits: { socketsWithoutKey: 2, keyWithin: 300 } });
    const waiting = [sent(), sent()];
    await expect.poll(() => server.sync.health().sockets).toBe(2);
    expect(await sent()).toBe(CLOSED.crowded);
    expect(await Promise.all(waiting)).toEqual([1013, 1013]);
  });
});

describe('with a key', () => {
  it('what no page sends closes the socket, and reaches nobody', async () => {
    server = await served();
    const key = await server.key();
    const reader = await server.key({ readOnly: true });
    const desk = device(key);
    await isOpen(desk);
    const heard: string[] = [];
    desk.provider.on('stateless', ({ payload }: { payload: string }) => heard.push(payload));
    const open = (one: string) => authFrame(SHEET, tokenOf(one));
    expect(await sent(open(reader), sayFrame(SHEET, 6, 'to all'))).toBe(CLOSED.malformed);
    expect(await sent(open(key), 'text')).toBe(CLOSED.malformed);
    expect(await sent(open(key), new Uint8Array([1]))).toBe(CLOSED.malformed);
    const lies = syncFrame(SHEET, 2, new Uint8Array(3));
    lies[lies.length - 4] = 120;
    expect(await sent(open(key), lies)).toBe(CLOSED.malformed);
    expect(await sent(open(key), syncFrame(SHEET, 0, new Uint8Array([200, 1])))).toBe(CLOSED.malformed);
    expect(heard).toEqual([]);
  });

  it('a sheet grows to a size, and takes so many devices', async () => {
    server = await served({ limits: { sheet: 20_000, perSheet: 2 } });
    const key = await server.key();
    const [desk, phone] = [device(key), device(key)];
    await isOpen(desk);
    await isOpen(phone);
    const third = device(key);
    await expect.poll(() => third.refusal).toBe('too-many');
    desk.write('a', 'entry', 'x'.repeat(30_000));
    await expect.poll(() => desk.refusal).toBe('sheet-full');
    phone.write('b', 'entry', '2.25 in');
    const mark = phone.ask();
    await expect.poll(() => phone.stored?.mark).toBe(mark);
    expect(phone.refusal).toBeUndefined();
  });

  it('whoever sends too fast is read more slowly, and loses nothing', async () => {
    server = await served({ limits: { socketRate: { perSecond: 200, atOnce: 10 } } });
    const desk = device(await server.key());
    await isOpen(desk);
    for (let i = 0; i < 60; i += 1) desk.write('a', `f${i}`, i);
    const mark = desk.ask();
    await expect.poll(() => desk.stored?.mark).toBe(mark);
    expect(server.metrics.of('paused')).toBeGreaterThan(0);
  });
});

it('a full disk is told; what was written meanwhile is stored, and told to be, once there is room', async () => {
  server = await served({ pages: 48 });
  const desk = device(await server.key());
  await isOpen(desk);
  const states = () => desk.said.flatMap((said) => (said.type === 'storing' ? [said.state] : []));
  for (let i = 0; i < 3; i += 1) desk.write('a', `note${i}`, 'x'.repeat(90_000));
  await expect.poll(states).toEqual(['full']);
  const mark = desk.ask();
  const phone = device(desk.key);
  // Others see it all the same, and are told too.
  await expect.poll(() => phone.cells().get('a')?.size).toBe(3);
  await expect.poll(() => phone.said.some(({ type }) => type === 'storing')).toBe(true);
  expect(desk.stored?.mark).not.toBe(mark);
  await server.store.database.transaction((run) => run('PRAGMA max_page_count=100000'));
  await expect.poll(() => desk.stored?.mark).toBe(mark);
  expect(states()).toEqual(['full', 'well']);
});
