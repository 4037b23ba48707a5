import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import { inRepository } from './root.mjs';

/** Builds the command line into a folder: `fitwright.js`. @param {string} outDir */
export async function buildCommand(outDir) {
  const { build } = await import('vite');
  const { lezer } = await import('@lezer/generator/rollup');
  await build({
    configFile: false,
    root: inRepository('.'),
    logLevel: 'warn',
    publicDir: false,
    plugins: [lezer()],
    // Everything goes into the one file: it runs without node_modules.
    ssr: { noExternal: true, target: 'node' },
    build: {
      ssr: inRepository('src/command/main.ts'),
      outDir,
      emptyOutDir: true,
      target: 'node20',
      minify: false,
      rolldownOptions: {
        output: { entryFileNames: 'fitwright.js', banner: '#!/usr/bin/env node', codeSplitting: false },
      },
    },
  });
  chmodSync(join(outDir, 'fitwright.js'), 0o755);
}
