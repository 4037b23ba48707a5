// Part of `npm run lint`: imports go one way and in no ring.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { sep } from 'node:path';
import { lintImports } from './import-lint.mjs';
import { inRepository } from './root.mjs';

/** @type {Map<string, string>} */
const files = new Map();
for (const folder of ['shared', 'cells', 'templates', 'src', 'tests']) {
  if (!existsSync(inRepository(folder))) continue;
  for (const name of readdirSync(inRepository(folder), { recursive: true, encoding: 'utf8' })) {
    const path = `${folder}/${name.split(sep).join('/')}`;
    if (/\.(m?js|tsx?)$/.test(path) && !path.endsWith('.d.ts'))
      files.set(path, readFileSync(inRepository(path), 'utf8'));
  }
}

const problems = lintImports(files);
for (const problem of problems) console.error(problem);
console.log(
  `Imports of ${files.size} files: ${problems.length === 0 ? 'one way, no ring' : `${problems.length} problems`}`,
);
process.exitCode = problems.length === 0 ? 0 : 1;
