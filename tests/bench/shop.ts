/**
 * Devices at a shop's server: from a write at one to its coming at another, memory and bytes, beside a bare relay of messages
 * in the same run; then two servers over Redis and PostgreSQL. `npm run bench:shop -- SECONDS`. Each device writes once a second.
 */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { WebSocket } from 'ws';
import * as Y from 'yjs';
import { sheetDocument } from '../../src/document/sharing/wire.ts';
import { Keys } from '../../src/shop/store/keys.ts';
import { type Running, running } from '../shop/killed.ts';
import { Device, dropFolder, newFolder, openStore } from '../shop/served.ts';
import { haveServices, services } from '../shop/services.ts';

const SECONDS = Number(process.argv[2] ?? 20);
const [DEVICES, SHEETS] = [200, 50];
/** Milliseconds in which nothing came, after which what has not come is lost. */
const GIVEN_UP = 15_000;

const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));
const megabytes = (pid: number) =>
  Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0) / 1024;

/** Processor time of processes. */
const seconds = (pids: readonly number[]) =>
  pids.reduce((sum, pid) => {
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]!.split(' ');
    return sum + (Number(fields[11]) + Number(fields[12])) / 100;
  }, 0);

/** A device, whichever way it is joined. */
interface Joined {
  doc: Y.Doc;
  bytes: () => number;
  close(): void;
}

const measure = async (
  name: string,
  pids: readonly number[],
  join: (i: number) => Joined,
  ready: (all: Joined[]) => Promise<void>,
) => {
  const all = Array.from({ length: DEVICES }, (_, i) => join(i));
  await ready(all);
  // A value that was overwritten on its way has come with the one that took its place: of each writer the latest tells of all
  // before it.
  const sent = all.map((): number[] => []);
  const times: number[] = [];
  let overtaken = 0;
  for (const { doc } of all) {
    const seen = new Map<string, number>();
    doc.getMap<number>('sheet').observe((event, transaction) => {
      if (transaction.local) return;
      const now = performance.now();
      for (const key of event.keysChanged) {
        const by = sent[Number(key.slice(2))]!;
        const from = seen.get(key) ?? 0;
        const to = by.indexOf(event.target.get(key) as number) + 1;
        for (const at of by.slice(from, to)) times.push(now - at);
        overtaken += Math.max(0, to - from - 1);
        seen.set(key, Math.max(from, to));
      }
    });
  }
  const before = all.reduce((sum, one) => sum + one.bytes(), 0);
  // What this process, in which all devices are, is late by itself; and what the servers take of a core.
  const own = monitorEventLoopDelay({ resolution: 5 });
  own.enable();
  const [cpuBefore, began] = [seconds(pids), performance.now()];
  const timers = all.map(({ doc }, i) => {
    const write = () => {
      const at = performance.now();
      sent[i]!.push(at);
      doc.getMap<number>('sheet').set(`at${i}`, at);
    };
    // Spread over the second.
    return setTimeout(
      () => {
        write();
        timers[i] = setInterval(write, 1000);
      },
      (i * 1000) / DEVICES,
    );
  });
  await pause(SECONDS * 1000);
  for (const timer of timers) clearInterval(timer);
  own.disable();
  const cores = ((seconds(pids) - cpuBefore) * 1000) / (performance.now() - began);
  const writes = sent.reduce((sum, { length }) => sum + length, 0);
  const expected = writes * (DEVICES / SHEETS - 1);
  // Late is not lost: it is waited for, as long as anything comes.
  await pause(500);
  const late = expected - times.length;
  const stopped = performance.now();
  for (let came = -1, quiet = 0; times.length < expected && quiet < GIVEN_UP; ) {
    quiet = times.length === came ? quiet + 250 : 0;
    came = times.length;
    await pause(250);
  }
  const waited = performance.now() - stopped;
  const bytes = all.reduce((sum, one) => sum + one.bytes(), 0) - before;
  times.sort((a, b) => a - b);
  const at = (share: number) => (times[Math.floor(share * (times.length - 1))] ?? Number.NaN).toFixed(1);
  const memory = pids.map((pid) => megabytes(pid).toFixed(0)).join(' + ');
  const overdue = times.filter((ms) => ms > 100).length;
  console.log(
    `${name}: ${writes} writes; of ${expected} to come ${expected - times.length} lost, ${late} later than half a second after the last write${
      late > 0 ? ` (all there after ${(waited / 1000).toFixed(1)} s more)` : ''
    }, ${overtaken} overtaken; median ${at(0.5)} ms, p95 ${at(0.95)} ms, most ${at(1)} ms, over 100 ms ${((100 * overdue) / times.length).toFixed(1)} %; devices’ own process late by p95 ${(own.percentile(95) / 1e6).toFixed(1)} ms; ${cores.toFixed(2)} cores, ${memory} MB; ${(bytes / 1e6).toFixed(2)} MB received by devices`,
  );
  for (const one of all) one.close();
  await pause(300);
};

/** Passes every message on to all others of its path, and knows nothing of it. */
const RELAY = `
import { WebSocketServer } from 'ws';
const rooms = new Map();
const server = new WebSocketServer({ port: 0, host: '127.0.0.1' }, () => console.log(server.address().port));
server.on('connection', (socket, { url }) => {
  const room = rooms.get(url) ?? new Set();
  rooms.set(url, room.add(socket));
  socket.on('message', (data) => { for (const other of room) if (other !== socket) other.send(data); });
});`;

const relay = async () => {
  const child = spawn(process.execPath, ['--input-type=module', '--eval', RELAY], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const port = Number(await new Promise((done) => child.stdout.once('data', (text) => done(String(text)))));
  const sockets: WebSocket[] = [];
  await measure(
    'bare relay',
    [child.pid!],
    (i) => {
      const doc = new Y.Doc();
      const socket = new WebSocket(`ws://127.0.0.1:${port}/${i % SHEETS}`);
      sockets.push(socket);
      let bytes = 0;
      socket.on('message', (data: Buffer) => {
        bytes += data.length;
        Y.applyUpdate(doc, new Uint8Array(data), 'remote');
      });
      doc.on('update', (update: Uint8Array, origin: unknown) => {
        if (origin !== 'remote') socket.send(update);
      });
      return { doc, bytes: () => bytes, close: () => socket.close() };
    },
    async () => {
      while (sockets.some(({ readyState }) => readyState !== WebSocket.OPEN)) await pause(50);
    },
  );
  child.kill();
};

const shop = async (name: string, servers: readonly Running[], key: string) => {
  const devices: Device[] = [];
  await measure(
    name,
    servers.map(({ pid }) => pid),
    (i) => {
      const server = servers[Math.floor(i / SHEETS) % servers.length]!;
      const one = new Device(server.port, key, sheetDocument(`s${i % SHEETS}`));
      devices.push(one);
      let bytes = 0;
      one.socket.on('message', ({ data }: { data: ArrayBuffer }) => {
        bytes += data.byteLength;
      });
      return { doc: one.doc, bytes: () => bytes, close: () => one.close() };
    },
    async () => {
      while (devices.some(({ provider }) => !provider.isSynced)) await pause(50);
    },
  );
};

const newKey = async (folder: string, postgres?: string) => {
  const store = await openStore(folder, postgres);
  const { key } = await new Keys(store.database).make({ label: 'bench', readOnly: false });
  await store.database.close();
  return key;
};

console.log(`${DEVICES} devices on ${SHEETS} sheets, ${SECONDS} s each:`);
const folder = newFolder();
await relay();
const key = await newKey(folder);
const one = await running(folder);
await shop('one server, SQLite', [one], key);
await one.stop();
if (haveServices) {
  const shared = await services();
  const given = { redis: shared.redis, postgres: shared.postgres };
  const keyThere = await newKey(folder, shared.postgres);
  const two = [await running(folder, 0, given), await running(folder, 0, given)];
  await shop('two servers, Redis and PostgreSQL', two, keyThere);
  for (const server of two) await server.stop();
  await shared.stop();
} else console.log('two servers: redis-server and postgresql are not here.');
dropFolder(folder);
process.exit(0);
