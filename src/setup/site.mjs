import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { extname, join, relative, sep } from 'node:path';
import { gzipSync } from 'node:zlib';

/**
 * One file as it is sent.
 * @typedef {{ type: string, cache: string, tag: string, plain: Buffer, gzip: Buffer | null }} Page
 */

/** @type {Record<string, string>} */
const types = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
};

const packedAlready = new Set(['.png', '.ico', '.woff2']);

/**
 * Reads a built folder into memory, packed once, so that no request path ever reaches the disk.
 * @param {string} folder
 * @returns {Map<string, Page>} by request path
 */
export function readSite(folder) {
  /** @type {Map<string, Page>} */
  const site = new Map();
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const file = join(entry.parentPath, entry.name);
    const path = `/${relative(folder, file).split(sep).join('/')}`;
    const extension = extname(file);
    const plain = readFileSync(file);
    const gzip = packedAlready.has(extension) ? null : gzipSync(plain, { level: 9 });
    const page = {
      type: types[extension] ?? 'application/octet-stream',
      // Names under assets/ carry a hash of their content; all else must be asked for again, the service worker too.
      cache: path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
      tag: createHash('sha256').update(plain).digest('base64url').slice(0, 22),
      plain,
      gzip: gzip && gzip.length < plain.length ? gzip : null,
    };
    site.set(path, page);
    if (path === '/index.html') site.set('/', page);
  }
  return site;
}
