import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import type { CellRecord } from '../../shared/sheet/format.ts';
import { Engine } from '../../src/engine/engine.ts';
import { NOMINAL } from '../../src/engine/network/grid.ts';
import type { Row } from '../../src/engine/network/layout.ts';
import { keyOf, type RowKey } from '../../src/engine/rows/key.ts';
import type { CellResult, SheetResults } from '../../src/engine/rows/results.ts';
import { evaluate } from '../../src/language/compile/evaluate.ts';
import { walk } from '../walk.ts';
import { type Stand, valueByTrees } from './by-trees.ts';
import { edited, fileOf, job, jobEdit, renamed } from './random-job.ts';
import { Draw } from './slips/draw.ts';

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

/** A place within the spread of a source: an end in every third round, else anywhere. */
const standOf = (source: Row | undefined, draw: Draw, round: number): Stand => {
  if (round % 3 === 0) return draw.of([-1, 1]);
  const [low = 0, high = 0] = source?.cases?.values ?? [];
  return Number.isFinite(low + high) ? { value: draw.between(low, high) } : 0;
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

  it('is computed by the grid as by the trees, and nothing it can be lies outside its worst case', () => {
    let formulas = 0;
    let points = 0;
    const draw = new Draw(SEED);
    fc.assert(
      fc.property(job, (sheet) => {
        const engine = new Engine(library);
        engine.load(fileOf(sheet));
        const computed = engine.computed();
        const { network, grid, functions, figure } = computed;
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
          const sources = network.sourcesInOrder(row);
          const of = figure(row.key);
          if (!of || sources.length === 0) continue;
          for (let n = 0; n < 24; n++) {
            // At corners, at nominal and anywhere between.
            const at = new Map(
              sources.map((source) => [source, standOf(network.sourceRow(source), draw, n)]),
            );
            const value = Number(valueByTrees(computed, row, (source) => at.get(source) ?? 0));
            if (Number.isNaN(value) || Number.isNaN(of.low)) continue;
            points++;
            const noise = 1e-12 * Math.abs(of.value) + 1e-9 * Math.min(of.high - of.low, Math.abs(value));
            expect(value, row.key).toBeGreaterThanOrEqual(of.low - noise);
            expect(value, row.key).toBeLessThanOrEqual(of.high + noise);
          }
        }
        engine.destroy();
      }),
      { seed: SEED, numRuns: walk(30, 1200) },
    );
    expect(formulas).toBeGreaterThan(2000);
    expect(points).toBeGreaterThan(3000);
  });
});
