import { execFileSync } from 'node:child_process';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import * as Y from 'yjs';
import { sheetDocument } from '../../src/document/sharing/wire.ts';
import { Device, dropFolder, newFolder, type Served, served } from './served.ts';

const SHEET = sheetDocument('saw-arbor');

/** A file system of one megabyte; undefined where this machine lets nobody mount one. */
const small = (): string | undefined => {
  const folder = newFolder();
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=1m', 'tmpfs', folder], { stdio: 'ignore' });
    return folder;
  } catch {
    dropFolder(folder);
    return undefined;
  }
};
const disk = small();
let server: Served | undefined;
afterAll(async () => {
  await server?.stop();
  if (disk === undefined) return;
  execFileSync('umount', ['-l', disk]);
  dropFolder(disk);
});

test.skipIf(disk === undefined)(
  'a disk that is really full is told, edits go on between the devices, and all is stored once there is room',
  async () => {
    const filler = join(disk!, 'filler');
    writeFileSync(filler, Buffer.alloc(500_000));
    server = await served({ folder: disk! });
    const key = await server.key();
    const [desk, phone] = [new Device(server.port, key, SHEET), new Device(server.port, key, SHEET)];
    desk.write('a', 'entry', '2.25 in');
    const first = desk.ask();
    await expect.poll(() => desk.stored?.mark).toBe(first);
    for (let i = 0; i < 10; i += 1) desk.write('a', `note${i}`, 'x'.repeat(90_000));
    const mark = desk.ask();
    const states = () => desk.said.flatMap((said) => (said.type === 'storing' ? [said.state] : []));
    await expect.poll(states).toEqual(['full']);
    await expect.poll(() => phone.cells().get('a')?.size).toBe(11);
    expect(desk.stored?.mark).not.toBe(mark);
    // What was stored before is there for whoever reads it now.
    expect((await server.store.load(SHEET)).length).toBeGreaterThan(0);
    rmSync(filler);
    for (let i = 0; i < 9; i += 1) phone.write('a', `note${i}`, 'y');
    // The log of the database grows with what is taken in one go: room is made for it as a person would.
    execFileSync('mount', ['-o', 'remount,size=16m', disk!]);
    await expect.poll(() => desk.stored?.mark).toBe(mark);
    expect(states()).toEqual(['full', 'well']);
    const last = phone.ask();
    await expect.poll(() => phone.stored?.mark).toBe(last);
    const kept = new Y.Doc();
    for (const update of await server.store.load(SHEET)) Y.applyUpdate(kept, update);
    expect(kept.getMap('cells').toJSON()).toEqual(phone.cells().toJSON());
    for (const one of [desk, phone]) one.close();
  },
  60_000,
);
