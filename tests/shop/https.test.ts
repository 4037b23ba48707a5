import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { request as plainRequest } from 'node:http';
import { request } from 'node:https';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { WebSocket } from 'ws';
import { SYNC_PATH, sheetDocument, tokenOf } from '../../src/document/sharing/wire.ts';
import { listen } from '../../src/setup/listen.mjs';
import { Hosts } from '../../src/shop/http/hosts.ts';
import { createShopServer } from '../../src/shop/http/server.ts';
import { readCertificate } from '../../src/shop/start/certificate.ts';
import { authFrame } from './raw.ts';
import { dropFolder, type Served, served } from './served.ts';

/** A certificate as a shop makes one for itself, by the tool that every system with TLS has. */
const made = (folder: string, days: number): { file: string; key: string } => {
  const [file, key] = [join(folder, `${days}.pem`), join(folder, `${days}.key`)];
  const asked = ['-x509', '-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:prime256v1', '-nodes'];
  const names = ['-subj', '/CN=mill.example', '-addext', 'subjectAltName=DNS:mill.example'];
  execFileSync('openssl', ['req', ...asked, '-days', String(days), ...names, '-keyout', key, '-out', file], {
    stdio: 'ignore',
  });
  return { file, key };
};

/** With CI set it must be there. */
const canMake = process.env.CI !== undefined || spawnSync('openssl', ['version']).status === 0;

describe.skipIf(!canMake)('a server with a certificate', () => {
  let folder: string;
  let files: { file: string; key: string };
  let behind: Served;
  let port: number;
  let server: ReturnType<typeof createShopServer>;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'fitwright-https-'));
    files = made(folder, 2);
    const certificate = readCertificate(files);
    if (typeof certificate === 'string') throw new Error(certificate);
    behind = await served();
    const page = {
      type: 'text/html',
      cache: 'no-cache',
      tag: 't',
      plain: Buffer.from('<p>page'),
      gzip: null,
    };
    server = createShopServer({
      site: new Map([['/', page]]),
      hosts: new Hosts(['mill.example']),
      keys: behind.keys,
      addresses: () => ['https://mill.example/'],
      certificate,
      upgrade: (asked, socket, head) => behind.sync.upgrade(asked, socket, head),
      health: async () => ({ storing: 'well' }),
      metrics: () => '',
    });
    port = (await listen(server, { port: 0, next: false })) ?? 0;
  }, 60_000);
  afterAll(async () => {
    server.closeAllConnections();
    server.close();
    await behind.stop();
    dropFolder(behind.folder);
    rmSync(folder, { recursive: true });
  });

  const trusted = () => ({
    host: '127.0.0.1',
    port,
    servername: 'mill.example',
    ca: readFileSync(files.file),
  });

  test('a certificate of the shop serves the page by HTTPS, and its headers ask for no plain HTTP', async () => {
    const answer = await new Promise<{ status: number; body: string }>((done, failed) => {
      request({ ...trusted(), path: '/', headers: { host: `mill.example:${port}` } }, (came) => {
        let body = '';
        came.on('data', (part: Buffer) => {
          body += part;
        });
        came.on('end', () => done({ status: came.statusCode ?? 0, body }));
      })
        .on('error', failed)
        .end();
    });
    expect(answer).toEqual({ status: 200, body: '<p>page' });
    // In clear it answers nothing.
    await expect(
      new Promise((done, failed) => {
        plainRequest({ host: '127.0.0.1', port, path: '/' }, done).on('error', failed).end();
      }),
    ).rejects.toThrow();
  });

  test('sheets go over it too', async () => {
    const key = await behind.key();
    const socket = new WebSocket(`wss://127.0.0.1:${port}${SYNC_PATH}`, {
      ...trusted(),
      headers: { host: `mill.example:${port}`, origin: `https://mill.example:${port}` },
    });
    const name = sheetDocument('saw-arbor');
    socket.on('open', () => socket.send(authFrame(name, tokenOf(key))));
    const first = await new Promise<Buffer>((done, failed) => {
      socket.on('message', (data: Buffer) => done(data));
      socket.on('error', failed);
      socket.on('close', (code) => failed(new Error(`closed with ${code}`)));
    });
    expect(first.toString()).toContain(name);
    expect(first.toString()).toContain('read-write');
    socket.close();
  });

  test('a request that never ends, and a connection that begins none, are let go', async () => {
    expect(server.headersTimeout).toBeLessThanOrEqual(5000);
    const half = connect(port, '127.0.0.1');
    half.on('error', () => {});
    half.on('connect', () => half.write('x'));
    await new Promise((done) => half.on('close', done));
  }, 30_000);

  test('a certificate that is none, has run out, or is not of its key is told in words', () => {
    const other = made(folder, 3);
    expect(readCertificate({ file: files.file, key: other.key })).toMatch(
      /is not the key of the certificate/,
    );
    const later = Date.now() + 4 * 86_400_000;
    expect(readCertificate(files, later)).toMatch(/ran out on/);
    const none = join(folder, 'none.pem');
    writeFileSync(none, 'none');
    expect(readCertificate({ file: none, key: files.key })).toMatch(/is no certificate in PEM/);
    expect(readCertificate({ file: files.file, key: none })).toMatch(/is no key in PEM/);
    expect(readCertificate({ file: join(folder, 'gone'), key: none })).toMatch(/cannot be read/);
  });
});
