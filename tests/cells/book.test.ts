import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import { grouped } from '../../cells/groups.ts';
import type { CellKind } from '../../cells/record/cell.ts';
import { kindPage } from '../../src/command/book/kind-page.ts';
import { plain } from '../../src/command/book/markdown.ts';
import { bookPages, FOLDER } from '../../src/command/book/pages.ts';
import { coverage, coverageTable, withoutOutside } from '../../src/setup/coverage.mjs';
import { inRepository } from '../../src/setup/root.mjs';

const kinds = [...library.kinds.values()];
const sineBar = library.kinds.get('sine-bar') as CellKind;

test('the book in the repository is what the library gives now (npm run book writes it)', () => {
  const pages = bookPages(library);
  const kept = readdirSync(inRepository(`cells/${FOLDER}`)).filter((name) => name.endsWith('.md'));
  expect(kept.sort()).toEqual([...library.kinds.keys()].map((key) => `${key}.md`).sort());
  const stale = [...pages].filter(
    ([path, text]) => readFileSync(inRepository(`cells/${path}`), 'utf8') !== text,
  );
  expect(stale.map(([path]) => path)).toEqual([]);
});

test('every cell stands in one group of the index', () => {
  const listed = grouped(kinds).flatMap((one) => one.kinds.map((kind) => kind.key));
  expect(listed.sort()).toEqual(kinds.map((kind) => kind.key).sort());
});

test('a page shows formula, condition, source and the example as worked out', () => {
  const page = kindPage(library, sineBar);
  expect(page).toContain(
    '\\mathrm{height} = \\mathrm{roller\\_distance} \\cdot \\sin\\left(\\mathrm{angle}\\right)',
  );
  expect(page).toContain('Otherwise no result: The angle lies from 0 to below 90 degrees.');
  // L sin(angle) = 1.082198 in, shown in the places of an inch.
  expect(page).toMatch(/\| height of blocks \| \*\*1\.0822\d*\sin\*\* \| 1\.082198 in, ± 1e-6 in \|/);
});

test('a page is not written with an example that does not come out', () => {
  const [example] = sineBar.examples;
  if (!example) throw new Error('the sine bar has no example');
  const wrong = { ...example, expect: { height: { value: '1.09 in', within: '1e-6 in' } } };
  expect(() => kindPage(library, { ...sineBar, examples: [wrong] })).toThrow(/sine-bar.*height/);
});

test('nothing in a text is taken for marks', () => {
  expect(plain('a|b <i> *c* `d` [e] f_g')).toBe('a\\|b \\<i\\> \\*c\\* \\`d\\` \\[e\\] f\\_g');
});

test('the table of checks tells how each cell is held', () => {
  const rows = coverage(kinds);
  expect(rows.find((row) => row.key === 'sine-bar')).toMatchObject({
    computed: 2,
    recomputed: 0,
    files: ['cells/measuring-geometry.test.ts'],
  });
  expect(rows.every((row) => row.seen + row.computed + row.memory + row.recomputed > 0)).toBe(true);
  const own = [
    { key: 'x', seen: 0, computed: 0, memory: 0, recomputed: 1, files: [] },
    { key: 'y', seen: 1, computed: 0, memory: 0, recomputed: 0, files: [] },
  ];
  expect(withoutOutside(own)).toEqual(['x']);
  expect(coverageTable(own)).toContain('Recomputed only: x');
  // A cell without a check from outside says so on its page.
  for (const key of withoutOutside(rows))
    expect(library.kinds.get(key)?.sources.join(' '), key).toContain('No published worked example was found');
});
