import { mkdtempSync, rmSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type KeyRecord, type NewKey, WIRE_EDITION } from '../../src/document/sharing/wire.ts';
import { listen } from '../../src/setup/listen.mjs';
import { Hosts } from '../../src/shop/http/hosts.ts';
import { createShopServer } from '../../src/shop/http/server.ts';
import { Keys } from '../../src/shop/store/keys.ts';
import { openSqlite } from '../../src/shop/store/sqlite.ts';
import { Store } from '../../src/shop/store/store.ts';

let folder: string;
let port: number;
let key: string;
let storing: 'well' | 'full' = 'well';
const upgraded: string[] = [];
const ends: Array<() => unknown> = [];

interface Answer {
  status: number;
  headers: Record<string, unknown>;
  body: string;
}

const ask = (
  path: string,
  { method = 'GET', body = '', ...headers }: Record<string, string> = {},
): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const sent = request({ host: '127.0.0.1', port, path, method, headers }, (answer) => {
      let text = '';
      answer.setEncoding('utf8').on('data', (part: string) => {
        text += part;
      });
      answer.on('end', () =>
        resolve({ status: answer.statusCode ?? 0, headers: answer.headers, body: text }),
      );
    });
    sent.on('upgrade', (answer, socket) => {
      socket.destroy();
      resolve({ status: answer.statusCode ?? 0, headers: {}, body: '' });
    });
    sent.on('error', reject).end(body);
  });
const bearer = (text: string) => ({ authorization: `Bearer ${text}` });
const make = async (wish: object, by = key): Promise<Answer> =>
  ask('/shop/keys', { method: 'POST', body: JSON.stringify(wish), ...bearer(by) });

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fitwright-http-'));
  const store = new Store(await openSqlite(join(folder, 'shop.sqlite')));
  await store.prepare();
  const keys = new Keys(store.database);
  await keys.follow(60_000);
  key = (await keys.make({ label: 'the first', readOnly: false })).key;
  const page = { type: 'text/html', cache: 'no-cache', tag: 't', plain: Buffer.from('<p>page'), gzip: null };
  const server = createShopServer({
    site: new Map([['/', page]]),
    hosts: new Hosts(['mill.example']),
    keys,
    addresses: () => ['http://mill.example/'],
    upgrade: (asked, socket) => {
      upgraded.push(asked.url ?? '');
      socket.end('HTTP/1.1 101 Switching Protocols\r\nconnection: upgrade\r\nupgrade: websocket\r\n\r\n');
    },
    health: async () => ({ storing }),
    metrics: () => 'fitwright_sockets 3\n# EOF\n',
  });
  port = (await listen(server, { port: 0, next: false })) ?? 0;
  ends.push(
    () => server.close(),
    () => server.closeAllConnections(),
    () => keys.stop(),
    () => store.database.close(),
    () => rmSync(folder, { recursive: true }),
  );
});
afterAll(async () => {
  for (const end of ends) await end();
});

describe('a shop’s server over HTTP', () => {
  test('serves the page and says what it is', async () => {
    expect(await ask('/')).toMatchObject({ status: 200, body: '<p>page' });
    const about = await ask('/shop/about');
    expect(JSON.parse(about.body)).toEqual({
      shop: true,
      wire: WIRE_EDITION,
      addresses: ['http://mill.example/'],
    });
    expect(about.headers['cache-control']).toBe('no-store');
    expect((await ask('/shop/none')).status).toBe(404);
    expect((await ask('/shop/about', { method: 'POST' })).status).toBe(405);
  });

  test('answers nothing under a name that is not its own, and no page of another server', async () => {
    for (const path of ['/', '/shop/about', '/shop/keys']) {
      const answer = await ask(path, { host: `evil.example:${port}`, ...bearer(key) });
      expect(answer.status).toBe(421);
      expect(JSON.stringify(answer.headers)).not.toContain('evil.example');
      expect((await ask(path, { origin: 'http://evil.example', ...bearer(key) })).status).toBe(421);
      expect((await ask(path, { host: `mill.example:${port}` })).status).not.toBe(421);
    }
  });

  test('hands over the socket of the sheets alone, and to its own pages alone', async () => {
    const asks = { connection: 'upgrade', upgrade: 'websocket' };
    expect((await ask('/shop/sync', { ...asks, origin: `http://127.0.0.1:${port}` })).status).toBe(101);
    expect(upgraded).toEqual(['/shop/sync']);
    expect((await ask('/shop/sync', { ...asks, origin: 'http://evil.example' })).status).toBe(421);
    expect((await ask('/shop/sync', { ...asks, host: 'evil.example' })).status).toBe(421);
    expect((await ask('/shop/keys', asks)).status).toBe(404);
    expect((await ask('/shop/sync')).status).toBe(426);
    expect(upgraded).toHaveLength(1);
  });

  test('a key makes, lists and ends keys; the key itself is told once', async () => {
    const answer = await make({ label: 'the other shop', sheet: 'abc', readOnly: true });
    expect(answer.status).toBe(201);
    const made = JSON.parse(answer.body) as NewKey;
    expect(made).toMatchObject({ label: 'the other shop', sheet: 'abc', readOnly: true });
    const list = await ask('/shop/keys', bearer(key));
    expect(list.body).not.toContain(made.key);
    const records = JSON.parse(list.body) as KeyRecord[];
    expect(records.map(({ label }) => label)).toEqual(['the first', 'the other shop']);
    expect((await ask(`/shop/keys/${made.id}`, { method: 'DELETE', ...bearer(key) })).status).toBe(200);
    expect((await ask('/shop/keys', bearer(made.key))).body).toContain('has been ended');
    expect((await ask('/shop/keys/none', { method: 'DELETE', ...bearer(key) })).status).toBe(404);
    // The key that asks stays, or nobody might be left to make another.
    const [own] = records;
    expect((await ask(`/shop/keys/${own!.id}`, { method: 'DELETE', ...bearer(key) })).status).toBe(409);
  });

  test.each([
    ['', /JSON object/],
    ['[]', /JSON object/],
    ['{"label":" ","readOnly":true}', /whom/],
    ['{"label":"a","readOnly":1}', /only reads/],
    ['{"label":"a","readOnly":true,"sheet":"../x"}', /no sheet/],
    [`{"label":"${'a'.repeat(81)}","readOnly":true}`, /80 characters/],
  ])('a wish that is none is answered in words: %s', async (body, words) => {
    const answer = await ask('/shop/keys', { method: 'POST', body, ...bearer(key) });
    expect(answer.status).toBe(400);
    expect(answer.body).toMatch(words);
  });

  test('keys and metrics are for a key that writes every sheet', async () => {
    const reads = JSON.parse((await make({ label: 'r', readOnly: true })).body) as NewKey;
    const one = JSON.parse((await make({ label: 'o', sheet: 's', readOnly: false })).body) as NewKey;
    for (const path of ['/shop/keys', '/shop/metrics']) {
      for (const header of [{}, bearer('x'), bearer('W'.repeat(22)), { authorization: `Basic ${key}` }])
        expect((await ask(path, header as Record<string, string>)).status).toBe(401);
      for (const less of [reads, one]) expect((await ask(path, bearer(less.key))).status).toBe(403);
      expect((await ask(path, bearer(key))).status).toBe(200);
    }
    expect((await make({ label: 'more', readOnly: false }, reads.key)).status).toBe(403);
    expect((await make({ label: 'x'.repeat(5000), readOnly: false })).status).toBe(413);
  });

  test('health is told to everybody, and fails where nothing can be stored', async () => {
    expect(await ask('/shop/health')).toMatchObject({ status: 200, body: '{"storing":"well"}\n' });
    storing = 'full';
    expect((await ask('/shop/health')).status).toBe(503);
  });
});
