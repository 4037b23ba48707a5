import { basename, dirname, posix, resolve } from 'node:path';

/** Modules that want a document, or that only the page may use. */
const PAGE_ONLY = /\/src\/(page|document)\/|\/node_modules\/(solid-js|yjs|idb|@codemirror)\//;

const STARTS = /new Worker\(new URL\('(\.\/[\w-]+\.ts)', import\.meta\.url\)/g;

/**
 * Builds the workers as entries of the page's own build, so that what page and workers both use (language, units, library)
 * is in chunks that are fetched once and kept once. Left to itself each worker gets a copy of everything.
 *
 * @returns {import('vite').Plugin}
 */
export function sharedWorkers() {
  const entries = new Set();
  /** Names of the chunks that run in a worker from its start. */
  const inWorkers = new Set();
  return {
    name: 'shared-workers',
    apply: 'build',
    enforce: 'pre',
    config: () => ({
      build: {
        modulePreload: {
          polyfill: false,
          // What such a chunk fetches later must not be announced in links of a document: a worker has none.
          resolveDependencies: (_, deps, { hostId }) => (inWorkers.has(hostId) ? [] : deps),
        },
      },
    }),
    transform(code, id) {
      if (!id.endsWith('.ts') || !code.includes('new Worker(')) return undefined;
      const changed = code.replace(STARTS, (_, /** @type {string} */ path) => {
        const file = resolve(dirname(id), path);
        entries.add(file);
        const folder = dirname(file);
        const own = basename(path, '.ts');
        const name = `${basename(basename(folder) === own ? dirname(folder) : folder)}-${own}`;
        return `new Worker(import.meta.ROLLUP_FILE_URL_${this.emitFile({ type: 'chunk', id: file, name })}`;
      });
      if (changed.includes('new Worker(new URL('))
        throw new Error(`${id}: a worker is started in a way this build does not know.`);
      return { code: changed, map: null };
    },
    generateBundle(_, bundle) {
      const imports = (/** @type {string} */ name, found = new Set(/** @type {string[]} */ ([]))) => {
        const chunk = bundle[name];
        for (const next of chunk?.type === 'chunk' ? chunk.imports : []) {
          if (found.has(next)) continue;
          found.add(next);
          imports(next, found);
        }
        return found;
      };
      for (const chunk of Object.values(bundle)) {
        if (chunk.type !== 'chunk' || !entries.has(chunk.facadeModuleId)) continue;
        const all = [chunk.fileName, ...imports(chunk.fileName)];
        for (const name of all) inWorkers.add(name);
        const strays = all.flatMap((name) => {
          const one = bundle[name];
          return one?.type === 'chunk' ? one.moduleIds.filter((module) => PAGE_ONLY.test(module)) : [];
        });
        if (strays.length > 0)
          throw new Error(`${chunk.name} would bring ${strays.join(', ')} into a worker.`);
        // A chunk names only its nearest; named all at once they are asked for at once, and not level by level.
        const others = [...imports(chunk.fileName)].filter((name) => !chunk.imports.includes(name));
        const nearest = chunk.imports.at(-1);
        const from = nearest && chunk.code.lastIndexOf(basename(nearest));
        if (!from || from < 0) throw new Error(`${chunk.fileName} imports nothing.`);
        const end = chunk.code.indexOf(';', from) + 1;
        const added = others
          .map((name) => `import"./${posix.relative(dirname(chunk.fileName), name)}";`)
          .join('');
        chunk.code = chunk.code.slice(0, end) + added + chunk.code.slice(end);
      }
    },
  };
}
