import { inRepository } from './root.mjs';
import { buildIfChanged } from './stamp.mjs';

/** Builds the shop's server into dist/shop; returns whether anything had changed since the last build. */
export const buildShop = () =>
  buildIfChanged({
    inputs: ['src/shop', 'src/document', 'src/language', 'src/setup', 'shared', 'package-lock.json'],
    output: 'dist/shop',
    build: async () => {
      const { build } = await import('vite');
      const { lezer } = await import('@lezer/generator/rollup');
      await build({
        configFile: false,
        root: inRepository('.'),
        logLevel: 'warn',
        publicDir: false,
        plugins: [lezer()],
        // Packages stay where npm put them: one of them is a binary, and of Yjs there may be one alone.
        ssr: { target: 'node', external: true },
        build: {
          ssr: inRepository('src/shop/main.ts'),
          outDir: inRepository('dist/shop'),
          emptyOutDir: true,
          target: 'node20',
          minify: false,
          rolldownOptions: { output: { entryFileNames: 'shop.js', codeSplitting: false } },
        },
      });
    },
  });
