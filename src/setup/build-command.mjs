// npm's `prepare` runs this after every install, so that `npx fitwright` works at once.
import { chmodSync, existsSync } from 'node:fs';
import { inRepository } from './root.mjs';
import { stampInstall } from './stamp.mjs';

if (existsSync(inRepository('node_modules/vite'))) {
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
      outDir: inRepository('dist/command'),
      emptyOutDir: true,
      target: 'node20',
      minify: false,
      rolldownOptions: {
        output: { entryFileNames: 'fitwright.js', banner: '#!/usr/bin/env node', codeSplitting: false },
      },
    },
  });
  chmodSync(inRepository('dist/command/fitwright.js'), 0o755);
} else {
  console.log(
    'The command line was not built: the development packages are not installed (npm ci --include=dev).',
  );
}
stampInstall();
