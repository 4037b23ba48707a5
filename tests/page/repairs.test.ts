import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import type { SheetFile } from '../../shared/sheet/format.ts';
import { REPAIR_LABELS, repairsOf } from '../../src/page/home/repairs.ts';

const folder = new URL('../../templates/', import.meta.url);
const marks = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name): [string, string[]] => {
    const { title } = JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as SheetFile;
    return [name, title.tags ?? []];
  });

it.each(marks)('the marks of %s say what it repairs', (_, tags) => {
  expect(repairsOf(tags)).not.toEqual([]);
});

it('offers no repair that no template is for', () => {
  const first = new Set(marks.map(([, tags]) => repairsOf(tags)[0]));
  expect(REPAIR_LABELS.filter((label) => !first.has(label))).toEqual([]);
});
