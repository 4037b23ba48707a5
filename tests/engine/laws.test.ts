import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import type { CellRecord } from '../../shared/sheet/format.ts';
import { Engine } from '../../src/engine/engine.ts';
import type { CellResult } from '../../src/engine/rows/results.ts';
import { walk } from '../walk.ts';
import { randomSheet, type Sample } from './random-sheet.ts';

const SEED = 20261125;

const valuesAt = (sample: Sample, ends: readonly number[]): Map<string, number> => {
  const values = new Map(sample.leaves.map((leaf, i) => [leaf.name, ends[i] as number]));
  for (const { name, compute } of sample.formulas)
    values.set(
      name,
      compute((of) => values.get(of) as number),
    );
  return values;
};

describe('worst case by corners', () => {
  it('contains every corner of the box, and is no wider than they are', () => {
    fc.assert(
      fc.property(randomSheet, (sample) => {
        const engine = new Engine(library);
        const results = engine.load(sample.file);
        engine.destroy();
        const low = new Map<string, number>();
        const high = new Map<string, number>();
        const n = sample.leaves.length;
        for (let mask = 0; mask < 2 ** n; mask++) {
          const ends = sample.leaves.map((leaf, i) => (mask & (1 << i) ? leaf.high : leaf.low));
          for (const [name, value] of valuesAt(sample, ends)) {
            low.set(name, Math.min(low.get(name) ?? Infinity, value));
            high.set(name, Math.max(high.get(name) ?? -Infinity, value));
          }
        }
        const names = new Map(sample.file.cells.map((cell) => [cell.id, cell.name as string]));
        for (const cell of results.cells) {
          const figure = cell.outputs.value?.planned;
          const name = names.get(cell.id) as string;
          const reach = 1e-9 * Math.max(1e-3, Math.abs(low.get(name) as number));
          expect(figure, JSON.stringify(cell)).toBeDefined();
          expect(Math.abs((figure?.low as number) - (low.get(name) as number)), `${name} low`).toBeLessThan(
            reach,
          );
          expect(
            Math.abs((figure?.high as number) - (high.get(name) as number)),
            `${name} high`,
          ).toBeLessThan(reach);
        }
      }),
      { seed: SEED, numRuns: walk(50, 1500) },
    );
  });
});

const edit = fc.record({
  cell: fc.nat(100),
  micrometres: fc.integer({ min: 20_000, max: 90_000 }),
  tolerance: fc.integer({ min: 0, max: 60 }),
  kind: fc.constantFrom(
    'value' as const,
    'formula' as const,
    'rename' as const,
    'remove' as const,
    'measure' as const,
    'ring' as const,
  ),
  other: fc.nat(100),
});

describe('an edited engine', () => {
  it('equals one freshly built, bit for bit, after any sequence of edits', () => {
    fc.assert(
      fc.property(randomSheet, fc.array(edit, { minLength: 1, maxLength: 8 }), (sample, edits) => {
        const engine = new Engine(library);
        const seen = new Map<string, CellResult>();
        const take = (results: ReturnType<Engine['load']>) => {
          for (const cell of results.cells) seen.set(cell.id, cell);
          for (const id of results.gone) seen.delete(id);
        };
        take(engine.load(sample.file));
        const cells = new Map(sample.file.cells.map((cell) => [cell.id, cell]));
        for (const one of edits) {
          const ids = [...cells.keys()];
          const id = ids[one.cell % ids.length] as string;
          const other = cells.get(ids[one.other % ids.length] as string) as CellRecord;
          const cell = cells.get(id) as CellRecord;
          if (one.kind === 'remove' && cells.size > 2) {
            cells.delete(id);
            take(engine.apply({ gone: [id] }));
            continue;
          }
          const changed: CellRecord = { ...cell };
          if (one.kind === 'value') {
            changed.role = 'given';
            changed.entry = `${one.micrometres} um ± ${one.tolerance} um`;
          } else if (one.kind === 'measure')
            changed.measured = { entry: `${one.micrometres} um ± ${one.tolerance} um` };
          else if (one.kind === 'rename') changed.name = `renamed_${one.other}`;
          else {
            changed.role = 'worked';
            changed.entry = `=${other.name} * 2 - ${one.tolerance} um`;
          }
          cells.set(id, changed);
          take(engine.apply({ changed: [changed] }));
        }
        const fresh = new Engine(library);
        const anew = fresh.load({ ...sample.file, cells: [...cells.values()] });
        for (const cell of anew.cells) {
          const edited = seen.get(cell.id) as CellResult;
          expect(edited.outputs, JSON.stringify([...cells.values()])).toEqual(cell.outputs);
        }
        engine.destroy();
        fresh.destroy();
      }),
      { seed: SEED, numRuns: walk(50, 1500) },
    );
  });
});
