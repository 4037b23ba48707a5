// Builds one TypeScript file as the engine is built for its worker, and runs it in a Node of its own.
//   node tests/bench/run.mjs tests/bench/engine.ts [arguments]
import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { basename } from 'node:path';
import { lezer } from '@lezer/generator/rollup';
import { build } from 'vite';
import { inRepository } from '../../src/setup/root.mjs';

const [entry = '', ...rest] = process.argv.slice(2);
const name = basename(entry, '.ts');
// As deep as src/setup, so that the repository is found from it all the same.
const out = inRepository(`node_modules/.bench-${name}`);
await build({
  configFile: false,
  root: inRepository('.'),
  logLevel: 'warn',
  publicDir: false,
  plugins: [lezer()],
  ssr: { target: 'node' },
  build: {
    ssr: inRepository(entry),
    outDir: out,
    emptyOutDir: true,
    target: 'node20',
    minify: false,
    rolldownOptions: { output: { entryFileNames: `${name}.mjs`, codeSplitting: false } },
  },
});
const options = process.env.BENCH_NODE?.split(' ') ?? [];
const { status } = spawnSync(process.execPath, ['--expose-gc', ...options, `${out}/${name}.mjs`, ...rest], {
  stdio: 'inherit',
});
if (!process.env.BENCH_NODE) rmSync(out, { recursive: true, force: true });
process.exit(status ?? 1);
