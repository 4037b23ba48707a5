import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';

export const WORKER = 'service-worker.js';

/**
 * Puts the files of a built folder, and a hash of them as the edition, into the source of its service worker.
 * @param {string} source
 * @param {string} folder
 */
export function workerFor(source, folder) {
  const names = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .filter((name) => name !== WORKER && !name.endsWith('.map'))
    .sort();
  const hash = createHash('sha256').update(source);
  for (const name of names) hash.update(`${name}\0`).update(readFileSync(join(folder, name)));
  // The page itself is asked for as the folder.
  const files = ['./', ...names.filter((name) => name !== 'index.html').map((name) => `./${name}`)];
  const filled = source
    .replace('const files = [];', `const files = ${JSON.stringify(files)};`)
    .replace("const edition = '';", `const edition = '${hash.digest('hex').slice(0, 16)}';`);
  if (!filled.includes(JSON.stringify(files)) || filled.includes("const edition = '';"))
    throw new Error('The service worker has no place for its files and its edition.');
  return filled;
}

/**
 * Vite plugin: writes the service worker beside the built page, once everything else is there.
 * @param {string} source path of the worker's source
 * @returns {import('vite').Plugin}
 */
export function offline(source) {
  let folder = '';
  let written = true;
  return {
    name: 'offline',
    apply: 'build',
    configResolved(config) {
      folder = resolve(config.root, config.build.outDir);
      written = config.build.write;
    },
    closeBundle: {
      order: 'post',
      sequential: true,
      handler() {
        if (!written) return;
        writeFileSync(join(folder, WORKER), workerFor(readFileSync(source, 'utf8'), folder));
      },
    },
  };
}
