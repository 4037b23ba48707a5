import { inRepository } from './root.mjs';
import { buildIfChanged } from './stamp.mjs';

/** Builds the page into dist/page; returns whether anything had changed since the last build. */
export const buildPage = () =>
  buildIfChanged({
    inputs: [
      'src/page',
      'src/document',
      'src/engine',
      'src/language',
      'cells',
      'shared',
      'templates',
      'vite.config.ts',
      'src/setup/hyperformula-parts.mjs',
      'src/setup/offline.mjs',
      'src/setup/shared-workers.mjs',
      'src/setup/sheet-heads.mjs',
      'src/setup/slim-editor.mjs',
      'uno.config.ts',
      'package-lock.json',
    ],
    output: 'dist/page',
    build: async () => {
      // On the way of messages, which nobody reads a result from.
      console.error('Building the page, as after every change of it: this takes a few seconds.');
      const { build } = await import('vite');
      await build({ configFile: inRepository('vite.config.ts'), logLevel: 'warn' });
    },
  });
