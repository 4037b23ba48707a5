/**
 * Devices at a shop's server: from a write at one to its coming at another, memory and bytes, beside a bare relay of messages
 * in the same run; then two servers over Redis and PostgreSQL. `npm run bench:shop -- SECONDS`. Each device writes once a second.
 */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { WebSocket } from 'ws';
import * as Y from 'yjs';
import { sheetDocument } from '../../src/document/sharing/wire.ts';
import { Keys } from '../../src/shop/store/keys.ts';
import { type Running, running } from '../shop/killed.ts';
import { Device, dropFolder, newFolder, openStore } from '../shop/served.ts';
import { haveServices, services } from '../shop/services.ts';

const SECONDS = Number(process.argv[2] ?? 20);
const [DEVICES, SHEETS] = [200, 50];

const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));
const megabytes = (pid: number) =>
  Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0) / 1024;

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
  const times: number[] = [];
  for (const { doc } of all)
    doc.getMap<number>('sheet').observe((event, transaction) => {
      if (transaction.local) return;
      for (const key of event.keysChanged) times.push(performance.now() - (event.target.get(key) as number));
    });
  const before = all.reduce((sum, one) => sum + one.bytes(), 0);
  let writes = 0;
  const timers = all.map(({ doc }, i) => {
    const write = () => {
      writes += 1;
      doc.getMap<number>('sheet').set(`at${i}`, performance.now());
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
  await pause(500);
  const bytes = all.reduce((sum, one) => sum + one.bytes(), 0) - before;
  times.sort((a, b) => a - b);
  const at = (share: number) => (times[Math.floor(share * (times.length - 1))] ?? Number.NaN).toFixed(1);
  const memory = pids.map((pid) => megabytes(pid).toFixed(0)).join(' + ');
  const expected = writes * (DEVICES / SHEETS - 1);
  console.log(
    `${name}: ${writes} writes, ${times.length} of ${expected} came; median ${at(0.5)} ms, p95 ${at(0.95)} ms, most ${at(1)} ms; ${memory} MB; ${(bytes / 1e6).toFixed(2)} MB received by devices`,
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
