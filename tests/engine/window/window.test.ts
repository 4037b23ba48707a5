import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import { gradeOf } from '../../../shared/checks/states.ts';
import type { CellRecord, DecisionRule, SheetFile } from '../../../shared/sheet/format.ts';
import { GuardedEngine } from '../../../src/engine/guarded-engine.ts';
import type { CellResult } from '../../../src/engine/rows/results.ts';
import { TrialSheet } from '../../../src/engine/trial/trial-sheet.ts';
import type { WindowFound } from '../../../src/engine/window/answer.ts';
import { windowOf } from '../../../src/engine/window/window.ts';
import { walk } from '../../walk.ts';

const SEED = 20261130;
const MM = 1e-3;

const sheet = (cells: CellRecord[], rule: DecisionRule = 'worst-case'): SheetFile => ({
  format: 'fitwright-sheet',
  version: 2,
  title: { title: 'Pump bush' },
  units: { length: 'mm' },
  rule,
  cells,
});

const line = (
  id: string,
  role: CellRecord['role'],
  entry: string,
  more: Partial<CellRecord> = {},
): CellRecord => ({
  id,
  role,
  name: id,
  quantity: 'length',
  entry,
  ...more,
});

/** Everything a sheet says, with one line's entry another. */
class Worked {
  private readonly engine = new GuardedEngine(library);
  private readonly results = new Map<string, CellResult>();

  constructor(private readonly file: SheetFile) {
    this.take(this.engine.load(file).cells);
  }

  private take(cells: readonly CellResult[]): void {
    for (const cell of cells) this.results.set(cell.id, cell);
  }

  with(id: string, entry: string): ReadonlyMap<string, CellResult> {
    const record = this.file.cells.find((one) => one.id === id) as CellRecord;
    this.take(this.engine.apply({ changed: [{ ...record, entry }] }).cells);
    while (this.engine.isSettling) this.take(this.engine.draw(true).cells);
    return this.results;
  }
}

const holds = (found: WindowFound, results: ReadonlyMap<string, CellResult>): boolean =>
  found.checks.every(({ cell, output, as }) => {
    const check = results.get(cell)?.outputs[output]?.check;
    const grade = gradeOf((as === 'new' ? check?.asNew : check?.inService)?.state ?? 'waiting');
    return grade === 'in' || grade === 'near';
  });

const windowIn = (file: SheetFile, cell: string, range?: { low: number; high: number }) => {
  const trial = new TrialSheet(library);
  trial.load(file);
  const before = JSON.stringify(file.cells.map(({ id }) => trial.result(id)));
  const found = windowOf(trial, { cell, field: 'entry', ...(range ? { range } : {}) });
  expect(JSON.stringify(file.cells.map(({ id }) => trial.result(id)))).toBe(before);
  trial.destroy();
  return found;
};

const mm = fc.integer({ min: -60, max: 60 }).map((n) => n / 10);
const rules: fc.Arbitrary<DecisionRule> = fc.constantFrom(
  'worst-case',
  'iso14253-2013',
  'iso14253-2017',
  'simple',
);
const formulas = fc.constantFrom(
  '=x - a',
  '=a - x',
  '=(x + b) / 2',
  '=MAX(x; a) - b',
  '=ABS(x - a) + b / 10',
  '=(x - a) * (x - b) / 20 mm',
  '=IF(x > a; x - b; b - x)',
  '=400 mm^2 / x - b',
  '=held - a',
);

const job = fc.record({
  rule: rules,
  x: fc.integer({ min: 150, max: 250 }).map((n) => `${n / 10} mm`),
  tolerance: fc.constantFrom('± 0.05 mm', '+0.1 mm -0 mm', '± 0.5 %', '± 0.3 mm'),
  a: fc.integer({ min: 150, max: 250 }).map((n) => `${n / 10} mm ± 0.2 mm`),
  b: fc.integer({ min: 100, max: 300 }).map((n) => `${n / 10} mm ± 0.1 mm (k=2)`),
  judged: fc.array(
    fc.record({ formula: formulas, low: mm, width: fc.integer({ min: 5, max: 100 }).map((n) => n / 10) }),
    { minLength: 1, maxLength: 3 },
  ),
});

describe('a window', () => {
  it('holds at every value told, and misses none, by the sheet worked out at each of a grid', () => {
    fc.assert(
      fc.property(job, ({ rule, x, tolerance, a, b, judged }) => {
        const file = sheet(
          [
            line('x', 'chosen', x, { tolerance }),
            line('a', 'given', a),
            line('b', 'measured', b),
            line('held', 'chosen', '=x + b'),
            ...judged.map(({ formula, low, width }, i) =>
              line(`y${i}`, 'worked', formula, {
                limits: { lower: `${low} mm`, upper: `${low + width} mm` },
              }),
            ),
          ],
          rule,
        );
        const found = windowIn(file, 'x', { low: 0, high: 48 * MM });
        const worked = new Worked(file);
        const pieces =
          found.is === 'found' ? [found.piece, ...found.others].filter((one) => one !== undefined) : [];
        const grid = Array.from({ length: 61 }, (_, i) => 0.37 + 0.79 * i);
        if (found.is === 'none') {
          // Then what is left out holds at no value, and what is not never all at once.
          const isOut = judged.map((_, i) => found.leftOut.some(({ cell }) => cell === `y${i}`));
          for (const at of grid) {
            const results = worked.with('x', `${at} mm`);
            const stood = judged.map((_, i) =>
              ['in', 'near'].includes(
                gradeOf(results.get(`y${i}`)?.outputs.value?.check.asNew.state ?? 'waiting') ?? '',
              ),
            );
            expect(
              stood.some((one, i) => one && isOut[i]),
              `left out, but holds at ${at}`,
            ).toBe(false);
            if (isOut.includes(false)) expect(stood.every((one, i) => one || isOut[i])).toBe(false);
          }
          return;
        }
        const step = 10 ** -found.places * MM;
        for (const { low, high } of pieces)
          for (const at of [low.at, high.at])
            expect(holds(found, worked.with('x', `${(at / MM).toFixed(found.places)} mm`)), `end ${at}`).toBe(
              true,
            );
        for (const mms of grid) {
          const at = mms * MM;
          if (at < found.searched.low || at > found.searched.high) continue;
          const isTold = pieces.some(({ low, high }) => low.at <= at && at <= high.at);
          const isNear = pieces.some(({ low, high }) => low.at - 2 * step <= at && at <= high.at + 2 * step);
          const isTrue = holds(found, worked.with('x', `${mms} mm`));
          if (isTold) expect(isTrue, `told at ${mms}`).toBe(true);
          if (isTrue && pieces.length < 5) expect(isNear, `missed at ${mms}`).toBe(true);
        }
      }),
      { seed: SEED, numRuns: walk(15, 4000) },
    );
  });
});
