import { describe, expect, test } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import { cautionTexts } from '../../cells/record/caution.ts';
import type { CellRecord } from '../../shared/sheet/format.ts';
import { withExamples } from '../../src/command/example.ts';
import { careOf } from '../../src/engine/report/care.ts';
import { linesOfStep } from '../../src/page/bench/step.ts';
import { jobs, sheetOf, templates } from '../templates/shelf.ts';

/**
 * Lists every kind and every template with what it warns of, where the page shows it: folded, unfolded, at the machine,
 * on paper. Run by `npm run prove -- cautions` to be read.
 */
const said: string[] = [];
const tell = (text: string) => said.push(text);

/** Kinds that only compute with figures, or read a size by hand: nothing in them moves, presses, heats or cuts. */
const HARMLESS = new Set(
  [...library.kinds.values()].filter(({ group }) => group === 'measuring').map(({ key }) => key),
);

describe('cautions of the kinds', () => {
  test.each([...library.kinds.values()].map((kind) => [kind.key, kind] as const))('%s', (key, kind) => {
    const texts = cautionTexts(kind);
    tell(`\n${kind.title} (${key})${texts.length === 0 ? ': none' : ''}`);
    for (const text of texts) tell(`  - ${text}`);
    expect(texts.length > 0 || HARMLESS.has(key), `${key} warns of nothing`).toBe(true);
    // Read on a sheet and on paper, where no other cell's page is at hand.
    for (const text of texts) expect(text).not.toMatch(/cautions of (that|those|the other) cells?/i);
  });
});

describe('cautions of the templates', () => {
  test.each([...templates, ...jobs])('%s', (name) => {
    const file = withExamples(sheetOf(name));
    const byName = new Map(file.cells.flatMap((cell) => (cell.name ? [[cell.name, cell] as const] : [])));
    const named = (text: string): CellRecord | undefined => byName.get(text);
    const care = new Map(file.cells.map((cell) => [cell.id, careOf(cell, { library, named })] as const));
    const order = file.cells.map(({ id }) => id);
    const read = file.cells.filter(({ role, gauge }) => role === 'measured' || gauge !== undefined);
    const stops = (read.length > 0 ? read : file.cells.slice(-1)).map(({ id }) => ({ cell: id }));
    const atTheMachine = stops.map((_, at) => linesOfStep(order, stops, at));
    const onPaper = [...new Set([...care.values()].flat())];
    tell(`\n== ${file.title.title} (${name})`);
    for (const cell of file.cells) {
      const texts = care.get(cell.id) ?? [];
      if (texts.length === 0) continue;
      const steps = atTheMachine.flatMap((ids, at) => (ids.includes(cell.id) ? [at + 1] : []));
      tell(
        `  ${cell.label}: folded the sign; unfolded ${texts.length}; at the machine, step ${steps.join(', ')}`,
      );
      for (const text of texts) tell(`    - ${text}`);
      expect(steps, `${cell.label} is never said at the machine`).not.toEqual([]);
    }
    tell(`  on paper, above what is to be cut: ${onPaper.length}, each once`);
    expect(onPaper.length).toBeGreaterThan(0);
  });
});

test('the list, to be read', () => {
  if (process.env.FITWRIGHT_PROVE !== undefined) console.log(said.join('\n'));
  expect(said.length).toBeGreaterThan(library.kinds.size);
});
