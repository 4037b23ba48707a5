import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import { buildForNode } from './node-build.mjs';

/** Builds the command line into a folder: `fitwright.js`. @param {string} outDir */
export async function buildCommand(outDir) {
  const file = 'fitwright.js';
  await buildForNode({
    main: 'src/command/main.ts',
    outDir,
    file,
    banner: '#!/usr/bin/env node',
    // Everything goes into the one file: it runs without node_modules.
    ssr: { noExternal: true },
  });
  chmodSync(join(outDir, file), 0o755);
}
