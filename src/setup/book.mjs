// Writes the cell book as Markdown: npm run book
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { lezer } from '@lezer/generator/rollup';
import { runnerImport } from 'vite';
import { coverage, coverageTable } from './coverage.mjs';
import { inRepository } from './root.mjs';

const settings = {
  configFile: /** @type {const} */ (false),
  plugins: [lezer()],
  logLevel: /** @type {const} */ ('warn'),
};
/** @type {{ module: typeof import('../command/book/pages.ts') }} */
const { module: book } = await runnerImport(inRepository('src/command/book/pages.ts'), settings);
/** @type {{ module: typeof import('../../cells/catalogue.ts') }} */
const { module: cells } = await runnerImport(inRepository('cells/catalogue.ts'), settings);

const home = inRepository('cells');
const pages = book.bookPages(cells.library);
mkdirSync(join(home, book.FOLDER), { recursive: true });
let written = 0;
for (const [path, text] of pages) {
  const file = join(home, path);
  mkdirSync(dirname(file), { recursive: true });
  if (existsSync(file) && readFileSync(file, 'utf8') === text) continue;
  writeFileSync(file, text);
  written += 1;
}
// A cell that went takes its page with it.
for (const name of readdirSync(join(home, book.FOLDER)))
  if (name.endsWith('.md') && !pages.has(`${book.FOLDER}/${name}`)) rmSync(join(home, book.FOLDER, name));

console.log(`${pages.size} pages, ${written} of them new or changed.\n`);
console.log(coverageTable(coverage([...cells.library.kinds.values()])));
