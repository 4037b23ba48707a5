import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import { Engine } from '../../src/engine/engine.ts';
import type { CellResult, SheetResults } from '../../src/engine/rows/results.ts';
import { Packer, Unpacker } from '../../src/engine/worker/packed.ts';
import { edited, fileOf, job, jobEdit } from './random-job.ts';

const SEED = 20261125;

/** Paths of the objects of a result, and the objects. */
function* parts(of: unknown, path = ''): Generator<[path: string, part: object]> {
  if (typeof of !== 'object' || of === null) return;
  yield [path, of];
  for (const [key, value] of Object.entries(of)) yield* parts(value, `${path}.${key}`);
}

/** What is kept: whole lists, and of outputs every figure, verdict, problem and set of limits. */
const isPart = (path: string): boolean =>
  /^\.(problems|remarks|slips|echoes|feeds|outputs)$|^\.outputs\.[^.]+(\.[^.]+)?$|\.limits\.[^.]+$/.test(
    path,
  );

const text = (of: unknown): string =>
  JSON.stringify(of, (_, value) => (typeof value === 'number' ? String(value) : value));

describe('results packed for the way out of the worker', () => {
  it('come out as they went in, and what did not change is the object it was', () => {
    let packed = 0;
    fc.assert(
      fc.property(job, fc.array(jobEdit, { minLength: 1, maxLength: 8 }), (first, edits) => {
        const engine = new Engine(library);
        const packer = new Packer();
        const unpacker = new Unpacker();
        const seen = new Map<string, CellResult>();
        const pass = (results: SheetResults) => {
          const sent = structuredClone(packer.pack(results));
          packed += sent.moved.length;
          const got = unpacker.unpack(sent);
          const inOrder = (cells: readonly CellResult[]) => [...cells].sort((a, b) => (a.id < b.id ? -1 : 1));
          expect({ ...got, cells: inOrder(got.cells) }).toEqual({
            ...results,
            cells: inOrder(results.cells),
          });
          for (const cell of got.cells) {
            const before = new Map(parts(seen.get(cell.id)));
            for (const [path, part] of parts(cell)) {
              const old = before.get(path);
              if (old && isPart(path) && text(old) === text(part)) expect(part, path).toBe(old);
            }
            seen.set(cell.id, cell);
          }
          for (const id of got.gone) seen.delete(id);
        };
        pass(engine.load(fileOf(first)));
        let now = first;
        for (const edit of edits) {
          const { after, change } = edited(now, edit);
          now = after;
          pass(engine.apply(change));
        }
        engine.destroy();
      }),
      { seed: SEED, numRuns: 60 },
    );
    expect(packed).toBeGreaterThan(100);
  });
});
