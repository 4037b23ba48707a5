import { inRepository } from './root.mjs';

/**
 * Leaves out of the build what the engine never calls. Every function a sheet can use is our own and registered by
 * `src/engine/plugin.ts`; of HyperFormula's some 400 only the logical ones (IF, AND, OR, NOT, TRUE, FALSE) are taken, and
 * the catalogue that describes the rest goes with them.
 *
 * @returns {import('vite').Plugin}
 */
export function slimHyperformula() {
  const folder = `${inRepository('node_modules/hyperformula/es/interpreter')}/`;
  const modules = {
    'interpreter/plugin/index.mjs': `export { BooleanPlugin } from ${JSON.stringify(`${folder}plugin/BooleanPlugin.mjs`)};`,
    'interpreter/functionMetadata/index.mjs': 'export const FUNCTION_DOCS = Object.create(null);',
  };
  return {
    name: 'slim-hyperformula',
    enforce: 'pre',
    resolveId(source, importer) {
      if (!importer?.includes('/hyperformula/es/')) return undefined;
      const found = Object.keys(modules).find((path) => source.endsWith(path));
      return found && `\0slim-hyperformula:${found}`;
    },
    load(id) {
      const path = id.startsWith('\0slim-hyperformula:')
        ? id.slice('\0slim-hyperformula:'.length)
        : undefined;
      return path && modules[/** @type {keyof typeof modules} */ (path)];
    },
  };
}
