import { fileURLToPath } from 'node:url';
import { lezer } from '@lezer/generator/rollup';
import unocss from 'unocss/vite';
import solid from 'vite-plugin-solid';
import { defineConfig } from 'vitest/config';
import { hyperformulaParts } from './src/setup/hyperformula-parts.mjs';
import { offline } from './src/setup/offline.mjs';
import { sharedWorkers } from './src/setup/shared-workers.mjs';
import { sheetHeads } from './src/setup/sheet-heads.mjs';
import { slimEditor } from './src/setup/slim-editor.mjs';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const testing = process.env.VITEST !== undefined;

// The grammar is compiled from its source wherever it is imported: page, worker, command line and tests alike.
export default defineConfig({
  root: testing ? here('.') : here('src/page'),
  base: './',
  publicDir: here('src/page/public'),
  plugins: [
    sharedWorkers(),
    hyperformulaParts(),
    slimEditor(),
    lezer(),
    sheetHeads(),
    // Before Solid's compiler, which writes a class that stands alone without its quotes, where it is not found.
    unocss(here('uno.config.ts')),
    solid(),
    offline(here('src/page/app/service-worker.js')),
  ],
  build: {
    outDir: here('dist/page'),
    emptyOutDir: true,
    target: 'es2022',
    // Inlined assets would be data: addresses, which the Content-Security-Policy allows for images only.
    assetsInlineLimit: 0,
    reportCompressedSize: false,
    // tests/browser/size.spec.ts says what script may weigh; whoever starts the page is told of nothing to be done.
    chunkSizeWarningLimit: 5000,
    rolldownOptions: {
      checks: { bundlerTimings: false, ineffectiveDynamicImport: false },
      output: {
        // Of a few lines each and wanted together: a script for each weighs more than what is in it.
        codeSplitting: {
          groups: [
            { name: 'first-view', test: /src\/page\/kit\/(?:kept|keep-equal|preferences)\.ts$/ },
            { name: 'entry-words', test: /src\/language\/(?:names|syntax\/sort|syntax\/wording)\.ts$/ },
          ],
        },
      },
    },
  },
  test: {
    environment: 'node',
    // The engine and its library are read in once for each core, not for each of the files: that took longer than the
    // tests themselves. A test puts back what it changes of what all of them share.
    isolate: false,
    maxWorkers: '100%',
    // Laws run hundreds of random cases; a busy machine is no failure.
    testTimeout: 120_000,
    expect: { poll: { timeout: 60_000 } },
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**', 'node_modules/**'],
    // Tests resolve packages as the page does, and for a browser this one is a refusal.
    alias: { ws: here('node_modules/ws/wrapper.mjs') },
    server: { deps: { inline: ['@hocuspocus/server'] } },
  },
});
