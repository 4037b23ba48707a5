// `node src/setup/sizes.mjs [part of a name]`: what the scripts of the page weigh, and what weighs most in each of them.
import { gzipSync } from 'node:zlib';
import { build } from 'vite';
import { inRepository } from './root.mjs';

const wanted = process.argv[2] ?? '';
const SHOWN = wanted ? 40 : 5;
const kB = (/** @type {number} */ size) => `${(size / 1000).toFixed(1).padStart(7)} kB`;
const weigh = (/** @type {string} */ code) => gzipSync(code, { level: 9 }).length;
const top = inRepository('').replaceAll('\\', '/');

/** Weights of the modules in a chunk: its own weight, shared out by what each weighs by itself. */
function modulesOf(/** @type {import('vite').Rolldown.OutputChunk} */ chunk) {
  const alone = Object.entries(chunk.modules).map(([id, { code }]) => ({
    id: id.replaceAll('\\', '/').replace(top, '').replace('\0', ''),
    size: weigh(code ?? ''),
  }));
  const share = weigh(chunk.code) / alone.reduce((total, { size }) => total + size, 0);
  return alone.map(({ id, size }) => ({ id, size: size * share })).sort((a, b) => b.size - a.size);
}

const made = /** @type {import('vite').Rolldown.RolldownOutput} */ (
  await build({
    configFile: inRepository('vite.config.ts'),
    logLevel: 'error',
    build: { write: false },
  })
);

const chunks = made.output.filter((one) => one.type === 'chunk');
console.log('Gzipped; the shares of modules are estimates.');
for (const chunk of chunks.sort((a, b) => weigh(b.code) - weigh(a.code))) {
  if (!chunk.fileName.includes(wanted)) continue;
  console.log(`${kB(weigh(chunk.code))}  ${chunk.fileName}`);
  for (const { id, size } of modulesOf(chunk).slice(0, SHOWN)) console.log(`    ${kB(size)}  ${id}`);
}
