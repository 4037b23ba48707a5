import { afterEach, expect, it } from 'vitest';
import * as Y from 'yjs';
import { covers, sheetDocument } from '../../src/document/sharing/wire.ts';
import { Keys } from '../../src/shop/store/keys.ts';
import { Draw } from '../engine/slips/draw.ts';
import { walk } from '../walk.ts';
import { type Running, running } from './killed.ts';
import { Device, dropFolder, newFolder, openStore } from './served.ts';

const SHEET = sheetDocument('saw-arbor');
const devices: Device[] = [];
let server: Running;
let folder = '';

afterEach(async () => {
  for (const device of devices.splice(0)) device.close();
  await server.kill();
  dropFolder(folder);
});

const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));

/** What the file alone holds, while no server has it open. */
const inFile = async (): Promise<Record<string, Record<string, unknown>>> => {
  const store = await openStore(folder);
  const doc = new Y.Doc();
  for (const update of await store.load(SHEET)) Y.applyUpdate(doc, update);
  await store.database.close();
  return doc.getMap('cells').toJSON() as Record<string, Record<string, unknown>>;
};

it('a server that is killed at any moment has lost nothing that it told was stored', async () => {
  const kills = walk(2, 20);
  const edits = walk(15, 50);
  folder = newFolder();
  const store = await openStore(folder);
  const { key } = await new Keys(store.database).make({ label: 'the shop', readOnly: false });
  await store.database.close();
  server = await running(folder);
  const { port } = server;
  const draw = new Draw(20261130);
  const next = () => draw.next();
  for (let i = 0; i < 3; i += 1) devices.push(new Device(port, key, SHEET));

  // Lines are made once, by one device.
  for (const cell of ['clash', ...Array.from({ length: 7 }, (_, i) => `c${i}`)])
    devices[0]!.write(cell, 'label', cell);
  for (const one of devices) await expect.poll(() => one.cells().size).toBe(8);

  /** What each device wrote, and how much of it was told to be stored. */
  const written = devices.map((): string[] => []);
  const stored = devices.map(() => 0);
  const marks = devices.map(() => new Map<number, number>());
  const hear = () => {
    for (const [i, one] of devices.entries()) {
      const told = one.stored;
      const upTo = told?.mark === undefined ? undefined : marks[i]!.get(told.mark);
      if (upTo !== undefined) stored[i] = Math.max(stored[i]!, upTo);
    }
  };
  let clashes = 0;
  for (let round = 0; round < kills; round += 1) {
    for (const one of devices) await expect.poll(() => one.provider.isSynced).toBe(true);
    if (round === 0)
      // However slow the disk is, each has been told of something before the first kill.
      for (const [i, one] of devices.entries()) {
        one.write('c0', `first-${i}`, i);
        written[i]!.push(`first-${i}`);
        marks[i]!.set(one.ask(), written[i]!.length);
        const heard = () => {
          hear();
          return stored[i];
        };
        await expect.poll(heard).toBe(1);
      }
    for (let n = 0; n < edits; n += 1) {
      for (const [i, one] of devices.entries()) {
        const name = `r${round}-${i}-${n}`;
        one.write(`c${n % 7}`, name, n);
        written[i]!.push(name);
        if (next() < 0.3) marks[i]!.set(one.ask(), written[i]!.length);
      }
      await pause(next() * 6);
      hear();
    }
    await pause(next() * 30);
    await server.kill();
    hear();
    const kept = new Set(Object.values(await inFile()).flatMap((cell) => Object.keys(cell)));
    devices.forEach((_, i) => {
      for (const name of written[i]!.slice(0, stored[i])) expect(kept.has(name), name).toBe(true);
    });
    // All three write one field while there is no server: two of the values do not remain.
    for (const one of devices) await expect.poll(() => one.provider.isSynced).toBe(false);
    for (const [i, one] of devices.entries()) one.write('clash', `entry${round}`, `${i} in`);
    clashes += 1;
    server = await running(folder, port);
  }
  for (const one of devices) await expect.poll(() => one.provider.isSynced).toBe(true);
  for (const one of devices) {
    const mark = one.ask();
    await expect.poll(() => one.stored?.mark).toBe(mark);
  }
  for (const one of devices)
    await expect.poll(() => covers(one.stored!, Y.encodeStateVector(one.doc)) || one.ask() < 0).toBe(true);
  const [first, ...others] = devices.map((one) => one.cells().toJSON());
  for (const other of others) expect(other).toEqual(first);
  const names = new Set(Object.values(first!).flatMap((cell) => Object.keys(cell)));
  for (const name of written.flat()) expect(names.has(name), name).toBe(true);
  expect(stored.every((count) => count > 0)).toBe(true);
  // Each device was told of both values that did not remain, whenever it came.
  for (const one of devices)
    await expect
      .poll(() => {
        const told = new Set(
          one.said.flatMap((said) => (said.type === 'lost' ? [`${said.key} ${said.lost}`] : [])),
        );
        return Array.from({ length: clashes }, (_, round) => {
          const stands = one.read('clash', `entry${round}`);
          return [0, 1, 2].filter((i) => told.has(`entry${round} ${i} in`) || stands === `${i} in`).length;
        });
      })
      .toEqual(Array.from({ length: clashes }, () => 3));
  const atRest = first;
  expect(await server.stop()).toBe(0);
  expect(await inFile()).toEqual(atRest);
});
