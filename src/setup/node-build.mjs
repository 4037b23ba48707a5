import { inRepository } from './root.mjs';

/**
 * Builds a program for Node into one file of a folder, which is emptied.
 * @param {{ main: string, outDir: string, file: string, banner?: string, ssr: import('vite').SSROptions }} of
 *   `main`: its source, from the root of the repository. `ssr`: which packages go into the file.
 */
export async function buildForNode({ main, outDir, file, banner, ssr }) {
  const { build } = await import('vite');
  const { lezer } = await import('@lezer/generator/rollup');
  await build({
    configFile: false,
    root: inRepository('.'),
    logLevel: 'warn',
    publicDir: false,
    plugins: [lezer()],
    ssr: { target: 'node', ...ssr },
    build: {
      ssr: inRepository(main),
      outDir,
      emptyOutDir: true,
      target: 'node20',
      minify: false,
      rolldownOptions: {
        output: { entryFileNames: file, ...(banner && { banner }), codeSplitting: false },
      },
    },
  });
}
