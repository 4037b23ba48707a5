import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import type { CellRecord } from '../../shared/sheet/format.ts';
import { Trial } from '../../src/engine/corners/trial.ts';
import { Engine } from '../../src/engine/engine.ts';
import { NOMINAL } from '../../src/engine/network/grid.ts';
import { keyOf, type RowKey } from '../../src/engine/rows/key.ts';
import type { CellResult, SheetResults } from '../../src/engine/rows/results.ts';
import { evaluate } from '../../src/language/compile/evaluate.ts';
import { walk } from '../walk.ts';
import { valueByTrees } from './by-trees.ts';
import { edited, fileOf, job, jobEdit, renamed } from './random-job.ts';

const SEED = 20261126;

/** Results by cell as they stand after every answer so far. */
const standing = (answers: readonly SheetResults[]): Map<string, CellResult> => {
  const seen = new Map<string, CellResult>();
  for (const { cells, gone } of answers) {
    for (const cell of cells) seen.set(cell.id, cell);
    for (const id of gone) seen.delete(id);
  }
  return seen;
};

const figures = (cells: Iterable<CellResult>) =>
  [...cells].map(({ id, outputs }) => [
    id,
    Object.entries(outputs).map(([name, { planned, measured, difference, replanned, logical, check }]) => [
      name,
      { planned, measured, difference, replanned, logical, check },
    ]),
  ]);

describe('a sheet of every kind of cell, right and wrong', () => {
  it('edited equals freshly built, bit for bit: figures, checks, problems, remarks, questions', () => {
    fc.assert(
      fc.property(job, fc.array(jobEdit, { minLength: 1, maxLength: 6 }), (first, edits) => {
        const engine = new Engine(library);
        const answers = [engine.load(fileOf(first))];
        let now = first;
        let measured = true;
        for (const edit of edits) {
          const { after, change } = edited(now, edit);
          if (edit.kind === 'measured') measured = edit.measured;
          now = after;
          answers.push(engine.apply(change));
        }
        const fresh = new Engine(library);
        fresh.apply({ measured });
        const seen = standing(answers);
        const anew = fresh.load(fileOf(now)).cells;
        expect([...seen.keys()].sort()).toEqual(anew.map(({ id }) => id).sort());
        for (const cell of anew) {
          const { outputs, problems, remarks, slips, echoes } = seen.get(cell.id) as CellResult;
          expect(
            { outputs, problems, remarks, slips, echoes },
            JSON.stringify(now.cells.find(({ id }) => id === cell.id)),
          ).toEqual({
            outputs: cell.outputs,
            problems: cell.problems,
            remarks: cell.remarks,
            slips: cell.slips,
            echoes: cell.echoes,
          });
          for (const output of Object.keys(cell.outputs))
            expect(engine.budget(cell.id, output)).toEqual(fresh.budget(cell.id, output));
        }
        engine.destroy();
        fresh.destroy();
      }),
      { seed: SEED, numRuns: walk(30, 1500) },
    );
  });

  it('shown in the other system of units has the same values, to the last bit', () => {
    fc.assert(
      fc.property(job, (sheet) => {
        const engine = new Engine(library);
        const answers = [engine.load(fileOf(sheet))];
        const before = figures(standing(answers).values());
        const length = sheet.settings.units.length === 'in' ? 'mm' : 'in';
        answers.push(engine.apply({ settings: { ...sheet.settings, units: { length } } }));
        expect(figures(standing(answers).values())).toEqual(before);
        engine.destroy();
      }),
      { seed: SEED, numRuns: walk(20, 600) },
    );
  });

  it('keeps every value when a cell is called otherwise', () => {
    fc.assert(
      fc.property(job, fc.nat(99), (sheet, at) => {
        const { id } = sheet.cells[at % sheet.cells.length] as CellRecord;
        const engine = new Engine(library);
        const before = figures(engine.load(fileOf(sheet)).cells);
        const other = new Engine(library);
        const cells = renamed(sheet.cells, id, 'umbenannt');
        expect(figures(other.load(fileOf({ ...sheet, cells })).cells)).toEqual(before);
        engine.destroy();
        other.destroy();
      }),
      { seed: SEED, numRuns: walk(20, 600) },
    );
  });

  it('is computed by the grid as by the trees, and no corner lies outside its worst case', () => {
    let formulas = 0;
    let corners = 0;
    fc.assert(
      fc.property(job, (sheet) => {
        const engine = new Engine(library);
        engine.load(fileOf(sheet));
        const computed = engine.computed();
        const { network, grid, functions, figure } = computed;
        const trial = new Trial(grid);
        for (const row of network.rows.values()) {
          const { body } = row.definition;
          const value = grid.value(row.slot, NOMINAL);
          if (body.kind !== 'formula' || row.ring || typeof value === 'object') continue;
          formulas++;
          const seen = (key: RowKey) => {
            const used = network.rows.get(key);
            const found = used && grid.value(used.slot, NOMINAL);
            return typeof found === 'object' || found === undefined ? Number.NaN : found;
          };
          expect(
            evaluate(body.expr, (ref) => seen(keyOf(ref)), functions),
            row.key,
          ).toBe(value);
          // Neither a kink nor a turn inside the box lies at a corner: such rows are left to what is close by.
          const kinks = JSON.stringify(sheet.cells).match(/ABS|IF\(|0\.0000 in/);
          const sources = network.sourcesInOrder(row);
          const of = figure(row.key);
          if (kinks || !of || sources.length === 0 || sources.length > 8) continue;
          for (let mask = 0; mask < 2 ** sources.length; mask++) {
            const at = new Map(sources.map((source, i) => [source, mask & (1 << i) ? 1 : -1] as const));
            const end = (source: number) => at.get(source) ?? 0;
            const corner = Number(valueByTrees(computed, row, end));
            const [first] = sources as [number];
            const turned = (source: number) => (source === first ? 0 : end(source));
            const tried = trial.values(row, turned, [{ source: first, end: end(first) }]);
            expect(tried[1], row.key).toBe(corner);
            if (Number.isNaN(corner)) continue;
            corners++;
            const noise = 1e-12 * Math.abs(of.value) + 1e-6 * (of.high - of.low);
            expect(corner, row.key).toBeGreaterThanOrEqual(of.low - noise);
            expect(corner, row.key).toBeLessThanOrEqual(of.high + noise);
          }
        }
        engine.destroy();
      }),
      { seed: SEED, numRuns: walk(30, 1200) },
    );
    expect(formulas).toBeGreaterThan(3000);
    expect(corners).toBeGreaterThan(1500);
  });
});
