import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { build, parseAst } from 'vite';
import { inRepository } from './root.mjs';
import { withoutUnusedMethods } from './unused-methods.mjs';

const SLIM = '\0slim-hyperformula';
const ENTRY = '\0entry';
const folder = `${inRepository('node_modules/hyperformula/es')}/`.replaceAll('\\', '/');
const path = (/** @type {string} */ name) => JSON.stringify(folder + name);

/** What the engine imports of HyperFormula, and how it is set up: every function but the logical ones is our own. */
const entry = `
import { HyperFormula } from ${path('HyperFormula.mjs')};
import { BooleanPlugin } from ${path('interpreter/plugin/BooleanPlugin.mjs')};
import enGB from ${path('i18n/languages/enGB.mjs')};
export { CellError, ErrorType } from ${path('Cell.mjs')};
export { DetailedCellError } from ${path('CellValue.mjs')};
export { FunctionArgumentType, FunctionPlugin } from ${path('interpreter/plugin/FunctionPlugin.mjs')};
export { HyperFormula };
HyperFormula.registerLanguage('enGB', enGB);
HyperFormula.registerFunctionPlugin(BooleanPlugin);
`;

/** Methods of HyperFormula that `src/engine/network/grid.ts` and `src/engine/network/plugin.ts` call. */
const CALLED = [
  'buildEmpty',
  'addSheet',
  'suspendEvaluation',
  'setCellContents',
  'resumeEvaluation',
  'destroy',
  'registerFunctionPlugin',
  'registerLanguage',
];

/** Functions of HyperFormula that there are: its logical plugin's, and the one its grammar has a rule for. */
const LOGICAL = 'TRUE FALSE IF IFS AND OR NOT XOR SWITCH IFERROR IFNA OFFSET'.split(' ');

const { default: enGB } = await import(
  pathToFileURL(inRepository('node_modules/hyperformula/es/i18n/languages/enGB.mjs')).href
);

/** Modules by the end of their path, and what stands in for them: each is reached by name, but never by a call of ours. */
const STAND_INS = {
  // All of it, asked by a module inside for one error.
  '/hyperformula/es/index.mjs': `export { NoSheetWithIdError } from ${path('errors.mjs')};`,
  // English names of some 400 functions, of which those below are there.
  '/i18n/languages/enGB.mjs': `export default ${JSON.stringify({ ...enGB, functions: Object.fromEntries(LOGICAL.map((id) => [id, id])) })};`,
  // The catalogue that describes the functions.
  '/interpreter/functionMetadata/index.mjs': 'export const FUNCTION_DOCS = Object.create(null);',
  // Off: `useColumnIndex`.
  '/Lookup/ColumnIndex.mjs': `export class ColumnIndex { constructor() { throw new Error('There is no column index in this build.'); } }`,
  // The reader of commercial keys and the list of what they grant. This program is under the GPL and says so; a key that
  // is not the plain word for that is refused.
  '/license/handsontable-license-key-parser/readLicense.mjs': `export const readEntitlementLicense = () => ({ licensed: false, reason: 'unreadable' });`,
  '/license/capabilities.mjs':
    'export const CAPABILITY_TABLE = new Map(); export const normalizeCapabilityToken = (token) => token.trim().toLowerCase();',
  // Makers of diagrams and of source text.
  './diagrams/render_public': 'export const createSyntaxDiagramsCode = undefined;',
  './generate/generate_public':
    'export const generateParserFactory = undefined; export const generateParserModule = undefined;',
};

/** Checks of a grammar that never changes: whole HyperFormula makes them in every test of the engine. */
const PASSED = {
  '/chevrotain/lib_esm/src/scan/lexer.js': [
    'validatePatterns',
    'performRuntimeChecks',
    'performWarningRuntimeChecks',
  ],
  '/chevrotain/lib_esm/src/parse/grammar/checks.js': ['validateGrammar', 'validateRuleIsOverridden'],
};

/** @param {string} code @param {readonly string[]} names of functions that shall find nothing */
function findNothing(code, names) {
  let rest = code;
  const found = parseAst(code)
    .body.map((/** @type {any} */ node) => node.declaration ?? node)
    .filter((/** @type {any} */ node) => node.type === 'FunctionDeclaration' && names.includes(node.id.name));
  if (found.length !== names.length)
    throw new Error(`HyperFormula has changed: not all of ${names.join(', ')} are there.`);
  for (const { body } of found.reverse())
    rest = `${rest.slice(0, body.start)}{ return []; }${rest.slice(body.end)}`;
  return rest;
}

/** @param {string} code the entry @param {import('vite').Plugin[]} plugins @returns {Promise<string>} */
async function inOneModule(code, plugins = []) {
  const given = {
    name: 'given',
    /** @type {'pre'} */
    enforce: 'pre',
    resolveId: (/** @type {string} */ id) => (id === ENTRY ? id : undefined),
    load: (/** @type {string} */ id) => (id === ENTRY ? code : undefined),
  };
  const made = /** @type {any} */ (
    await build({
      configFile: false,
      root: inRepository('.'),
      logLevel: 'error',
      publicDir: false,
      plugins: [given, ...plugins],
      build: {
        write: false,
        minify: false,
        target: 'esnext',
        modulePreload: false,
        rolldownOptions: { input: ENTRY, preserveEntrySignatures: 'strict' },
      },
    })
  );
  const { output } = Array.isArray(made) ? made[0] : made;
  if (output.length !== 1) throw new Error('HyperFormula does not come in one module.');
  return output[0].code;
}

/**
 * HyperFormula with what the engine can reach of it, as one module. Methods that nothing calls go, and then what only they
 * used, until nothing more does. `tests/setup/slim-hyperformula.test.ts` holds it against the whole.
 * @returns {Promise<string>}
 */
export async function slimText() {
  const used = new Set();
  const standIns = {
    name: 'stand-ins',
    /** @type {'pre'} */
    enforce: 'pre',
    resolveId(/** @type {string} */ source, /** @type {string | undefined} */ importer) {
      const from = importer?.replaceAll('\\', '/') ?? '';
      if (from !== ENTRY && !/\/(hyperformula\/es|chevrotain\/lib_esm)\//.test(from)) return undefined;
      const at = source.startsWith('.') ? new URL(source, `file://${from}`).pathname : source;
      const found = Object.keys(STAND_INS).find((end) => source === end || at.endsWith(end));
      if (found) used.add(found);
      return found && `\0stand-in:${found}`;
    },
    load: (/** @type {string} */ id) =>
      id.startsWith('\0stand-in:')
        ? STAND_INS[/** @type {keyof typeof STAND_INS} */ (id.slice('\0stand-in:'.length))]
        : undefined,
    transform(/** @type {string} */ code, /** @type {string} */ id) {
      const end = Object.keys(PASSED).find((one) => id.replaceAll('\\', '/').endsWith(one));
      if (!end) return undefined;
      used.add(end);
      return { code: findNothing(code, PASSED[/** @type {keyof typeof PASSED} */ (end)]), map: null };
    },
  };
  const words = ['grid', 'plugin'].flatMap(
    (name) => readFileSync(inRepository(`src/engine/network/${name}.ts`), 'utf8').match(/[\w$]+/g) ?? [],
  );
  // Called by the language itself.
  const called = [...words, 'toString', 'valueOf', 'toJSON', 'next', 'return', 'throw', 'then'];
  let text = await inOneModule(entry, [standIns]);
  const missing = [...Object.keys(STAND_INS), ...Object.keys(PASSED)].filter((end) => !used.has(end));
  if (missing.length > 0) throw new Error(`HyperFormula has changed: ${missing.join(', ')} is not there.`);
  for (;;) {
    const { code, left } = withoutUnusedMethods(text, { called, only: { HyperFormula: CALLED } });
    if (left === 0) return text;
    text = await inOneModule(code);
  }
}

/** @type {Promise<string> | undefined} */
let made;

/**
 * Gives the engine's build HyperFormula with what the engine can reach of it.
 * @returns {import('vite').Plugin}
 */
export function slimHyperformula() {
  return {
    name: 'slim-hyperformula',
    apply: 'build',
    enforce: 'pre',
    resolveId: (source) => (source === 'hyperformula' ? SLIM : undefined),
    load(id) {
      if (id !== SLIM) return undefined;
      made ??= slimText();
      return made;
    },
  };
}
