// Starts a cell of the library: npm run new-cell -- spindle-float "Spindle float"
// One file is all it takes; it computes at once, and every text in it says what belongs there.
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { inRepository } from './root.mjs';

/** @param {string} key */
const checkKey = (key) =>
  /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/.test(key)
    ? undefined
    : `"${key}" is not a key for a cell: lower-case words with hyphens between, such as spindle-float.`;

/** @param {string} text */
const quoted = (text) => `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'")}'`;

/** @param {string} key @returns {string} */
const titleOf = (key) => `${key.charAt(0).toUpperCase()}${key.slice(1).replaceAll('-', ' ')}`;

/** What a new cell says where its author must say something: a cell that still holds one of these is refused. */
const PLACEHOLDERS = {
  purpose: 'One line: what it is for.',
  inputs: 'Sizes first, constants last. Without a default an input must be filled in, unless it is optional.',
  constant: 'where this number comes from',
  share: 'share of the size',
  basis:
    'Basis: geometry where it follows from sizes alone, model where a law, a material or a rule of the trade stands between.',
  outputs: 'Two or three on the face: the numbers someone at the machine needs.',
  part: 'part of the size',
  assumption: 'What is taken for granted.',
  sources: 'Each with its edition; from memory, and common practice without a source, are said so.',
  source: 'Where the formula comes from.',
  cautions: 'Where the work can hurt someone: what to watch, and whose word comes first.',
  example: 'A worked example from outside',
  printed: 'where it is printed, or by which other way it was worked out',
};

/** Texts of a started cell that its author has not replaced. @param {string} source */
export const placeholdersIn = (source) => Object.values(PLACEHOLDERS).filter((text) => source.includes(text));

/** The file of a new cell. @param {string} key @param {string} title */
export const cellText = (key, title) => `import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: ${quoted(key)},
  edition: 1,
  title: ${quoted(title)},
  purpose: ${quoted(PLACEHOLDERS.purpose)},
  group: 'machine work',
  inputs: [
    // ${PLACEHOLDERS.inputs}
    { name: 'size', label: 'size', quantity: 'length', sensible: ['1 mm', '1 m'] },
    {
      name: 'share',
      label: ${quoted(PLACEHOLDERS.share)},
      quantity: 'number',
      default: '0.5',
      source: ${quoted(PLACEHOLDERS.constant)},
    },
  ],
  outputs: [
    // ${PLACEHOLDERS.basis}
    // ${PLACEHOLDERS.outputs}
    { name: 'part', label: ${quoted(PLACEHOLDERS.part)}, quantity: 'length', basis: 'geometry', formula: '=size * share', face: true },
  ],
  validity: [{ holds: '=size > 0 mm', otherwise: 'A size is above zero.', grade: 'error' }],
  assumptions: [${quoted(PLACEHOLDERS.assumption)}],
  // ${PLACEHOLDERS.sources}
  sources: [${quoted(PLACEHOLDERS.source)}],
  // ${PLACEHOLDERS.cautions}
  cautions: [],
  examples: [
    {
      title: ${quoted(PLACEHOLDERS.example)},
      source: ${quoted(PLACEHOLDERS.printed)},
      grade: 'recomputed',
      inputs: { size: '10 mm' },
      expect: { part: { value: '5 mm', within: 1e-9 } },
    },
  ],
});
`;

/**
 * Writes the file of a new cell; never over one that is there.
 * @param {string} folder @param {string} key @param {string} [title]
 * @returns {{ path: string } | { problem: string }}
 */
export function startCell(folder, key, title = titleOf(key)) {
  const wrong = checkKey(key);
  if (wrong) return { problem: wrong };
  const path = join(folder, `${key}.ts`);
  if (existsSync(path)) return { problem: `${path} is there already: choose another key, or edit it.` };
  writeFileSync(path, cellText(key, title), { flag: 'wx' });
  return { path };
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const [key, ...title] = process.argv.slice(2);
  const done = key
    ? startCell(inRepository('cells/kinds'), key, title.join(' ') || undefined)
    : { problem: 'Which cell? npm run new-cell -- spindle-float "Spindle float"' };
  if ('problem' in done) {
    console.error(done.problem);
    process.exitCode = 1;
  } else {
    console.log(
      `${done.path}: started. No other file is needed; npm run book adds its page to the book, npm test checks both.`,
    );
  }
}
