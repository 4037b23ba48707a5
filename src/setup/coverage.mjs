import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { inRepository } from './root.mjs';

/**
 * What of a cell is held against the outside: worked examples by how their figures are known, and the files of
 * `tests/outside` that compute it besides.
 * @typedef {{ key: string, seen: number, computed: number, memory: number, recomputed: number, files: string[] }} Covered
 */

/** Test files below a folder. @param {string} folder @returns {string[]} */
const testsIn = (folder) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts') && !name.endsWith('examples.test.ts'))
    .map((name) => join(folder, name));

/**
 * @param {readonly { key: string, examples: readonly { grade: string }[] }[]} kinds
 * @param {string} [folder]
 * @returns {Covered[]}
 */
export function coverage(kinds, folder = inRepository('tests/outside')) {
  const texts = testsIn(folder).map((path) => ({
    name: path.slice(folder.length + 1).replaceAll('\\', '/'),
    text: readFileSync(path, 'utf8'),
  }));
  return [...kinds]
    .sort((a, b) => (a.key < b.key ? -1 : 1))
    .map(({ key, examples }) => {
      /** @param {string} grade */
      const count = (grade) => examples.filter((example) => example.grade === grade).length;
      return {
        key,
        seen: count('seen'),
        computed: count('computed'),
        memory: count('memory'),
        recomputed: count('recomputed'),
        files: texts.filter(({ text }) => text.includes(`'${key}'`)).map(({ name }) => name),
      };
    });
}

/** Test files that compute cells by published figures, all of them entered with their source. @param {string} name */
const isReference = (name) => /\/reference-(?!cautions)/.test(name);

/** Cells whose every example is our own second method, and that no published figure is computed with. @param {readonly Covered[]} rows */
export const withoutOutside = (rows) =>
  rows
    .filter((row) => row.seen + row.computed + row.memory === 0 && !row.files.some(isReference))
    .map((row) => row.key);

/** As a Markdown table. @param {readonly Covered[]} rows */
export const coverageTable = (rows) => {
  const heads = ['cell', 'seen', 'computed', 'from memory', 'recomputed', 'further checks'];
  /** @param {number} n */
  const figure = (n) => (n > 0 ? String(n) : '');
  const lines = rows.map((row) => [
    row.key,
    figure(row.seen),
    figure(row.computed),
    figure(row.memory),
    figure(row.recomputed),
    row.files.join(', '),
  ]);
  const bare = withoutOutside(rows);
  return [
    ...[heads, heads.map(() => '---'), ...lines].map((line) => `| ${line.join(' | ')} |`),
    '',
    bare.length > 0 ? `Recomputed only: ${bare.join(', ')}` : 'Every cell has an example from outside.',
  ].join('\n');
};
