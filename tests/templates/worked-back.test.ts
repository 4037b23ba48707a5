import { expect, test } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import { writeEntry } from '../../shared/quantities/figures.ts';
import { displayUnit } from '../../shared/quantities/quantities.ts';
import type { CellRecord } from '../../shared/sheet/format.ts';
import { withExamples } from '../../src/command/example.ts';
import { nominalOf } from '../../src/engine/trial/path.ts';
import { TrialSheet, withEntry } from '../../src/engine/trial/trial-sheet.ts';
import { Desk } from '../../src/engine/workback/desk.ts';
import { planAt } from '../../src/engine/workback/work-back.ts';
import { jobs, sheetOf, templates } from './shelf.ts';

// What a template leads to, the last figure that is judged, is worked back to the likeliest input, and is then what was wanted.
test.each([...templates, ...jobs])('%s is worked back for its main result', (name) => {
  const file = withExamples(sheetOf(name));
  const trial = new TrialSheet(library);
  trial.load(file);
  const desk = new Desk(trial);
  const figures = file.cells
    .flatMap(
      ({ id }) =>
        trial
          .computed()
          .cells.get(id)
          ?.outputs.map((plan) => ({ id, plan })) ?? [],
    )
    .filter(({ plan }) => plan.limits && plan.measured === undefined)
    .reverse();
  let answered = 0;
  for (const { id, plan } of figures) {
    const figure = { cell: id, output: plan.name };
    const figureNow = (): number => {
      const book = trial.computed();
      const key = planAt(book, figure)?.planned;
      const row = key === undefined ? undefined : book.network.rows.get(key);
      return row ? nominalOf(book, row) : Number.NaN;
    };
    const now = figureNow();
    const symbol = displayUnit(plan.quantity, file.units, plan.display).symbol;
    const first = desk
      .offers(figure, writeEntry(now, symbol))
      .inputs.find(({ isChoice, influence }) => !isChoice && influence > 1e-9 * Math.abs(now));
    if (!first) continue;
    const change = { cell: first.cell, field: first.field };
    const wants = [0.3, -0.3].map((share) => now + share * first.influence);
    for (const want of wants)
      for (const { text } of desk.workBack({ figure, want: writeEntry(want, symbol), change }).solutions) {
        const record = trial.record(first.cell) as CellRecord;
        const got = trial.with(withEntry(record, first.field, text), figureNow);
        expect(Math.abs(got - want), `${first.name} = ${text}`).toBeLessThanOrEqual(3e-5 * Math.abs(want));
        answered++;
      }
    if (answered > 0) break;
  }
  // A sheet of readings alone, held against classes, has nothing that could be set otherwise.
  const isSet = file.cells.some(({ role }) => role === 'chosen' || role === 'given');
  expect(answered > 0).toBe(isSet);
  trial.destroy();
});
