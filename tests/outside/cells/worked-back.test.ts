import { afterAll, expect, test } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import type { CellKind, WorkedExample } from '../../../cells/record/cell.ts';
import { writeEntry } from '../../../shared/quantities/figures.ts';
import { displayUnit } from '../../../shared/quantities/quantities.ts';
import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import { libraryFor } from '../../../src/engine/book/example-library.ts';
import { exampleCells, unitsOfExample, workOut } from '../../../src/engine/book/worked-example.ts';
import { TrialSheet } from '../../../src/engine/trial/trial-sheet.ts';
import { Desk } from '../../../src/engine/workback/desk.ts';

/** Examples whose figures were seen in print: the source stands with each in `cells/kinds`. */
const published = [...library.kinds.values()].flatMap((kind) =>
  kind.examples
    // A pack of shims counts them anew for every thickness: the slope between two thicknesses is none.
    .filter(({ grade }) => grade === 'seen' && kind.key !== 'shim-pack')
    .map((example) => [kind.key, example.title, kind, example] as const),
);

const sheetOf = (kind: CellKind, example: WorkedExample): SheetFile => ({
  format: 'fitwright-sheet',
  version: 2,
  title: { title: example.title },
  units: unitsOfExample(example.inputs),
  rule: 'worst-case',
  cells: exampleCells(kind, example.inputs).map((cell, i): CellRecord => ({ id: `c${i}`, ...cell })),
});

const written = (value: number, quantity: string): string =>
  writeEntry(value, displayUnit(quantity, { length: 'mm' }).symbol);

let worked = 0;
afterAll(() => expect(worked).toBeGreaterThan(80));

// Each published figure, worked back to each number it was worked out from while another number stands in its place, gives
// the published number again: as near as the published figure is rounded.
test.each(published)('worked back, %s: %s', (_, __, kind, example) => {
  const file = sheetOf(kind, example);
  const it = file.cells.at(-1) as CellRecord;
  const engineLibrary = libraryFor(library, kind, example.inputs);
  const trial = new TrialSheet(engineLibrary, 'all');
  const desk = new Desk(trial);
  const out = workOut(library, kind, example);
  for (const { output, expected, got = Number.NaN } of out.expected) {
    const of = kind.outputs.find((one) => one.name === output)?.quantity ?? 'number';
    for (const input of kind.inputs) {
      const was = out.given[input.name]?.figure.value;
      if (!input.quantity || was === undefined || was === 0 || typeof example.inputs[input.name] !== 'string')
        continue;
      const moved = was * 1.03;
      const other = { ...it, inputs: { ...it.inputs, [input.name]: written(moved, input.quantity) } };
      trial.load({ ...file, cells: [...file.cells.slice(0, -1), other] });
      const there = trial.result(it.id)?.outputs[output]?.planned?.value;
      const slope = ((there ?? Number.NaN) - got) / (moved - was);
      if (!(Math.abs(slope * was) > 1e-3 * Math.abs(got))) continue;
      const answer = desk.workBack({
        figure: { cell: it.id, output },
        want: written(expected, of),
        change: { cell: it.id, field: `inputs.${input.name}` },
      });
      // What was read is not worked back to.
      if (answer.solutions.length === 0 && /was read off/.test(answer.reason ?? '')) continue;
      const off = answer.solutions.map(({ value = Number.NaN, all: [from, to] = [value, value] }) =>
        was >= from && was <= to
          ? 0
          : Math.min(Math.abs(value - was), Math.abs(from - was), Math.abs(to - was)),
      );
      const near = (3 * (Math.abs(got - expected) + 2e-5 * Math.abs(expected))) / Math.abs(slope);
      expect(Math.min(...off), `${output} by ${input.name}: ${answer.reason ?? ''}`).toBeLessThanOrEqual(
        near,
      );
      worked++;
    }
  }
  trial.destroy();
});
