import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { Engine } from '../../../src/engine/engine.ts';
import { planOf } from '../../../src/engine/montecarlo/plan.ts';
import { runPlan } from '../../../src/engine/montecarlo/run.ts';
import { simulate } from '../../../src/engine/montecarlo/simulate.ts';
import { highColumn, lowColumn, NOMINAL } from '../../../src/engine/network/grid.ts';
import { evaluate } from '../../../src/language/compile/evaluate.ts';
import { walk } from '../../walk.ts';
import { randomSheet, sheetOf } from '../random-sheet.ts';

const SEED = 20261125;

const cell = (name: string, entry: string, more: Partial<CellRecord> = {}): CellRecord => ({
  id: name,
  role: entry.startsWith('=') ? 'worked' : 'given',
  name,
  quantity: 'length',
  entry,
  ...more,
});

describe('the tree, evaluated by itself, equals the grid bit for bit', () => {
  it('at nominal, with a source at an end, and in the corners', () => {
    fc.assert(
      fc.property(randomSheet, ({ file }) => {
        const engine = new Engine(library);
        engine.load(file);
        const { network, grid, functions } = engine.computed();
        const rows = [...network.rows.values()].sort((a, b) => a.place - b.place);
        const compare = (column: number, end: (source: number) => -1 | 0 | 1, has?: ReadonlySet<unknown>) => {
          const values = new Map<string, number>();
          for (const row of rows) {
            const body = row.definition.body;
            const own =
              row.source === undefined
                ? NOMINAL
                : end(row.source) < 0
                  ? lowColumn(row.source)
                  : end(row.source) > 0
                    ? highColumn(row.source)
                    : NOMINAL;
            const value =
              body.kind === 'formula'
                ? evaluate(body.expr, (ref) => values.get(ref.name) as number, functions)
                : grid.value(row.slot, own);
            values.set(row.key, value as number);
            if (has && !has.has(row)) continue;
            const there = grid.value(row.slot, column) ?? grid.value(row.slot, NOMINAL);
            expect(Object.is(there, value), `${row.key} ${column}: ${there} ${value}`).toBe(true);
          }
        };
        compare(NOMINAL, () => 0);
        for (const row of rows) {
          const source = row.source;
          if (source === undefined) continue;
          compare(lowColumn(source), (of) => (of === source ? -1 : 0));
          compare(highColumn(source), (of) => (of === source ? 1 : 0));
        }
        for (const corner of network.corners)
          compare(corner.column, (source) => corner.end(source), corner.needs);
        engine.destroy();
      }),
      { seed: SEED, numRuns: walk(30, 1000) },
    );
  });

  it('and so does the simulation where every source stands still', () => {
    fc.assert(
      fc.property(randomSheet, ({ file }) => {
        const engine = new Engine(library);
        engine.load(file);
        const computed = engine.computed();
        const plan = planOf(computed);
        for (const row of plan.rows)
          if (row.kind === 'source') row.source.low = row.source.high = row.source.nominal;
        const { outputs } = runPlan(plan, computed.functions, { draws: 3, seed: 1, coverage: 0.95 });
        for (const output of outputs) {
          const figure = plan.outputs.find((one) => one.cell === output.cell)?.figure;
          expect(output.mean).toBe(figure?.value);
          expect(output.deviation).toBe(0);
        }
        engine.destroy();
      }),
      { seed: SEED, numRuns: walk(20, 600) },
    );
  });
});

it('no draw leaves the worst case where every source is bounded', () => {
  fc.assert(
    fc.property(randomSheet, ({ file }) => {
      const cells = file.cells.map((one) =>
        one.role === 'measured' ? { ...one, role: 'given' as const } : one,
      );
      const engine = new Engine(library);
      const results = engine.load({ ...file, cells });
      engine.destroy();
      const { outputs } = simulate({ ...file, cells }, library, { draws: 2000 });
      for (const { cell: id, histogram } of outputs) {
        const figure = results.cells.find((one) => one.id === id)?.outputs.value?.planned;
        if (!figure) throw new Error(`no figure for ${id}`);
        // Deviations are kept to seven figures.
        const hair = 1e-6 * (figure.high - figure.low) + 1e-15;
        expect(histogram.from).toBeGreaterThanOrEqual(figure.low - hair);
        expect(histogram.to).toBeLessThanOrEqual(figure.high + hair);
      }
    }),
    { seed: SEED, numRuns: walk(20, 600) },
  );
});

describe('a simulation', () => {
  const file = sheetOf([
    cell('bore', '50 mm ± 0.03 mm'),
    cell('shaft', '49.95 mm ± 0.01 mm'),
    cell('clearance', '= bore - shaft', { limits: { lower: '0.03 mm', upper: '0.08 mm' } }),
    cell('missing', ''),
    cell('waits', '= missing + bore'),
  ]);

  it('gives the same for a seed, and tells how far it has come', () => {
    const done: number[] = [];
    const first = simulate(file, library, { draws: 5000, seed: 3, onProgress: (n) => done.push(n) });
    expect(simulate(file, library, { draws: 5000, seed: 3 })).toEqual(first);
    expect(simulate(file, library, { draws: 5000, seed: 4 })).not.toEqual(first);
    expect(done.at(-1)).toBe(5000);
    expect(done).toEqual([...done].sort((a, b) => a - b));
  });

  it('leaves out what waits, and says why', () => {
    const { without } = simulate(file, library, { draws: 100 });
    expect(without.map((one) => one.cell)).toEqual(['missing', 'waits']);
    expect(without[1]?.problem?.message).toContain('missing');
  });

  it('counts the draws beyond each limit', () => {
    const { outputs } = simulate(file, library, { draws: 100_000 });
    const { conformance } = outputs.find((one) => one.cell === 'clearance') ?? {};
    // The sum of ±0.03 and ±0.01, both rectangular, is a trapezium: below -0.02 lie (0.04 - 0.02)^2 / 2 / 0.06 / 0.02.
    const below = (0.02 ** 2 - 0) / 2 / (0.06 * 0.02);
    // Above +0.03 the same with what is left of 0.04 - 0.03.
    const above = 0.01 ** 2 / 2 / (0.06 * 0.02);
    expect(Math.abs((conformance?.belowLower as number) - below)).toBeLessThan(0.005);
    expect(Math.abs((conformance?.aboveUpper as number) - above)).toBeLessThan(0.005);
    expect(conformance?.within).toBeCloseTo(
      1 - (conformance?.belowLower as number) - (conformance?.aboveUpper as number),
      10,
    );
  });

  it('counts draws that cannot be computed as failed, never as within', () => {
    const { outputs } = simulate(
      sheetOf([
        cell('gap', '1 mm ± 2 mm'),
        cell('root', '= SQRT(gap * 1 mm)', { limits: { lower: '0 mm' } }),
      ]),
      library,
      { draws: 20_000 },
    );
    const root = outputs.find((one) => one.cell === 'root');
    // Of -1 mm to 3 mm a quarter is below zero.
    expect(Math.abs((root?.failed as number) / 20_000 - 0.25)).toBeLessThan(0.015);
    expect(root?.conformance?.within).toBeLessThan(0.77);
  });

  // A normal source is its linear figure exactly (JCGM 100, G.1.3), whatever chance does to the shortest interval.
  it.each([1, 2, 3, 4, 5, 6, 7, 8])(
    'never calls the linear figure of a normal source misleading, seed %i',
    (seed) => {
      const file = sheetOf([cell('read', '0 mm ± 19.8 mm', { role: 'measured' })]);
      const { outputs } = simulate(file, library, { draws: 200_000, seed });
      expect(outputs[0]?.linear.verdict).not.toBe('misleads');
    },
  );

  it('says where the linear figure misleads', () => {
    const { outputs } = simulate(
      sheetOf([
        ...Array.from({ length: 8 }, (_, i) => cell(`part_${i}`, '10 mm ± 0.1 mm', { role: 'measured' })),
        cell('sum', `= ${Array.from({ length: 8 }, (_, i) => `part_${i}`).join(' + ')}`),
        cell('off', '0 mm ± 1 mm'),
        cell('square', '= off * off / 1 mm'),
      ]),
      library,
    );
    const of = (id: string) => outputs.find((one) => one.cell === id)?.linear;
    expect(of('sum')?.verdict).toBe('agrees');
    expect(of('square')?.verdict).toBe('misleads');
  });
});
