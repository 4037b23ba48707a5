import { inRepository } from './root.mjs';

const PARTS = '\0hyperformula-parts';
const folder = `${inRepository('node_modules/hyperformula/es')}/`.replaceAll('\\', '/');
const path = (/** @type {string} */ name) => JSON.stringify(folder + name);

/** What the engine uses of HyperFormula: every function but the logical ones is our own. */
const entry = `
import { HyperFormula } from ${path('HyperFormula.mjs')};
import { BooleanPlugin } from ${path('interpreter/plugin/BooleanPlugin.mjs')};
import enGB from ${path('i18n/languages/enGB.mjs')};
export { CellError, ErrorType } from ${path('Cell.mjs')};
export { DetailedCellError } from ${path('CellValue.mjs')};
export { FunctionArgumentType, FunctionPlugin } from ${path('interpreter/plugin/FunctionPlugin.mjs')};
export { NoSheetWithIdError } from ${path('errors.mjs')};
export { HyperFormula };
HyperFormula.registerLanguage('enGB', enGB);
HyperFormula.registerFunctionPlugin(BooleanPlugin);
`;

/** The descriptions of some 400 functions that the package brings: a quarter of its weight, and shown nowhere. */
const DOCS = '\0no-function-docs';

/**
 * HyperFormula with the function plugins the engine uses in place of all of them, which its own entry brings; modules
 * inside that ask that entry for something get this one too.
 *
 * @returns {import('vite').Plugin}
 */
export function hyperformulaParts() {
  return {
    name: 'hyperformula-parts',
    apply: 'build',
    enforce: 'pre',
    resolveId(source, importer) {
      if (source === 'hyperformula') return PARTS;
      if (!importer?.replaceAll('\\', '/').startsWith(folder)) return undefined;
      const at = new URL(source, `file://${importer.replaceAll('\\', '/')}`).pathname;
      if (at === `${folder}index.mjs`) return PARTS;
      return at.endsWith('/functionMetadata/index.mjs') ? DOCS : undefined;
    },
    load(id) {
      if (id === PARTS) return entry;
      return id === DOCS ? 'export const FUNCTION_DOCS = Object.create(null);' : undefined;
    },
  };
}
