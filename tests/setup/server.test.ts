import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type IncomingMessage, request, type Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { shopHeaders } from '../../src/setup/headers.mjs';
import { listen, readPort } from '../../src/setup/listen.mjs';
import { createSiteServer, takesGzip } from '../../src/setup/server.mjs';
import { readSite } from '../../src/setup/site.mjs';

const script = `console.log(${JSON.stringify('a long enough text to be worth packing, '.repeat(20))})`;
let folder: string;
let server: Server;
let port: number;

/** `path` goes out as it stands: fetch would take `..` out of it before sending. */
const ask = (path: string, options: { method?: string; headers?: Record<string, string> } = {}) =>
  new Promise<{ status: number; headers: IncomingMessage['headers']; body: Buffer }>((resolve, reject) => {
    request({ host: '127.0.0.1', port, path, ...options }, (answer) => {
      const parts: Buffer[] = [];
      answer.on('data', (part: Buffer) => parts.push(part));
      answer.on('end', () =>
        resolve({ status: answer.statusCode ?? 0, headers: answer.headers, body: Buffer.concat(parts) }),
      );
    })
      .on('error', reject)
      .end();
  });

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fitwright-site-'));
  mkdirSync(join(folder, 'page', 'assets'), { recursive: true });
  writeFileSync(join(folder, 'secret.txt'), 'not to be served');
  writeFileSync(join(folder, 'page', 'index.html'), '<!doctype html><title>t</title>');
  writeFileSync(join(folder, 'page', 'sw.js'), 'self.x = 1');
  writeFileSync(join(folder, 'page', 'assets', 'main-abc123.js'), script);
  server = createSiteServer(readSite(join(folder, 'page')));
  port = (await listen(server, { port: 0, next: false })) ?? 0;
});

afterAll(() => {
  server.close();
  server.closeAllConnections();
  rmSync(folder, { recursive: true });
});

describe('the page server', () => {
  test('every answer carries the strict headers, refusals too', async () => {
    for (const [path, method] of [
      ['/', 'GET'],
      ['/assets/main-abc123.js', 'HEAD'],
      ['/gone', 'GET'],
      ['/', 'POST'],
    ] as const) {
      const { headers } = await ask(path, { method });
      expect(headers['content-security-policy'], `${method} ${path}`).toMatch(
        /^default-src 'none'; script-src 'self'; worker-src 'self'; style-src 'self';/,
      );
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['referrer-policy']).toBe('no-referrer');
    }
  });

  test('for a shop: sockets of the very host, and no opener policy where browsers only complain of it', () => {
    const plain = shopHeaders('mill.example:4900', false);
    expect(plain['content-security-policy']).toContain("connect-src 'self' ws://mill.example:4900;");
    expect(plain).not.toHaveProperty('cross-origin-opener-policy');
    expect(plain['x-content-type-options']).toBe('nosniff');
    const secure = shopHeaders('mill.example', true);
    expect(secure['content-security-policy']).toContain("connect-src 'self' wss://mill.example;");
    expect(secure['cross-origin-opener-policy']).toBe('same-origin');
    expect(secure['content-security-policy']).not.toContain('unsafe');
  });

  test('files come with their type; hashed ones may be kept, the others must be asked for again', async () => {
    const page = await ask('/');
    expect(page.status).toBe(200);
    expect(page.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(page.headers['cache-control']).toBe('no-cache');
    expect((await ask('/sw.js')).headers['cache-control']).toBe('no-cache');
    const hashed = await ask('/assets/main-abc123.js?v=1');
    expect(hashed.headers['content-type']).toBe('text/javascript; charset=utf-8');
    expect(hashed.headers['cache-control']).toContain('immutable');
    expect(hashed.body.toString()).toBe(script);
  });

  test('gzip is sent to who takes it, under its own tag', async () => {
    const plain = await ask('/assets/main-abc123.js');
    const packed = await ask('/assets/main-abc123.js', { headers: { 'accept-encoding': 'br, gzip' } });
    expect(packed.headers['content-encoding']).toBe('gzip');
    expect(gunzipSync(packed.body).toString()).toBe(script);
    expect(packed.headers.etag).not.toBe(plain.headers.etag);
    expect(packed.headers.vary).toBe('accept-encoding');
    expect(takesGzip('gzip;q=0, *;q=1')).toBe(false);
    expect(takesGzip('*')).toBe(true);
  });

  test('a tag that still holds is answered without the body', async () => {
    const etag = (await ask('/')).headers.etag ?? '';
    const again = await ask('/', { headers: { 'if-none-match': `"other", W/${etag}` } });
    expect(again.status).toBe(304);
    expect(again.body).toHaveLength(0);
    expect((await ask('/', { headers: { 'if-none-match': '"other"' } })).status).toBe(200);
  });

  test('nothing beside the built files can be reached', async () => {
    for (const path of [
      '/../secret.txt',
      '/%2e%2e/secret.txt',
      '/assets/../../secret.txt',
      '//secret.txt',
      '/assets/',
    ]) {
      expect((await ask(path)).status, path).toBe(404);
    }
  });

  test('only GET and HEAD are answered', async () => {
    const head = await ask('/', { method: 'HEAD' });
    expect([head.status, head.body.length]).toEqual([200, 0]);
    const post = await ask('/', { method: 'POST' });
    expect([post.status, post.headers.allow]).toEqual([405, 'GET, HEAD']);
  });
});

describe('the port', () => {
  test.each([
    ['4870', 4870],
    ['0', 0],
    ['65535', 65535],
    ['65536', null],
    ['-1', null],
    ['80a', null],
    ['', null],
    [undefined, null],
  ])('PORT=%s is read as %s', (text, expected) => {
    expect(readPort(text)).toBe(expected);
  });

  test('a busy port gives way to a later one only where that is allowed', async () => {
    const second = createServer();
    expect(await listen(second, { port, next: false })).toBeNull();
    const taken = await listen(second, { port, next: true });
    expect(taken).toBeGreaterThan(port);
    second.close();
  });
});
