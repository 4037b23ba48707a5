import { buildForNode } from './node-build.mjs';
import { inRepository } from './root.mjs';
import { buildIfChanged } from './stamp.mjs';

/** Builds the shop's server into dist/shop; returns whether anything had changed since the last build. */
export const buildShop = () =>
  buildIfChanged({
    inputs: ['src/shop', 'src/document', 'src/language', 'src/setup', 'shared', 'package-lock.json'],
    output: 'dist/shop',
    build: () =>
      buildForNode({
        main: 'src/shop/main.ts',
        outDir: inRepository('dist/shop'),
        file: 'shop.js',
        // Packages stay where npm put them: one of them is a binary, and of Yjs there may be one alone.
        ssr: { external: true },
      }),
  });
