import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import { Engine } from '../../src/engine/engine.ts';
import type { SheetChange } from '../../src/engine/rows/change.ts';
import type { CellResult, SheetResults } from '../../src/engine/rows/results.ts';
import { createAnswer } from '../../src/engine/worker/answer.ts';
import { createEngineClient } from '../../src/engine/worker/client.ts';
import type { Reply, Request } from '../../src/engine/worker/messages.ts';
import { edited, fileOf, job, jobEdit } from './random-job.ts';

const SEED = 20261128;

/** The worker's side in this thread: answers in order, each in a task of its own, by what a worker would be handed. */
class NearWorker {
  onmessage: ((event: { data: Reply }) => void) | undefined;
  private readonly answering = createAnswer(library);

  postMessage(request: Request): void {
    const handed = structuredClone(request);
    setImmediate(() => this.onmessage?.({ data: structuredClone(this.answering.answer(handed)) }));
  }

  terminate(): void {}
}

const quiet = async () => {
  for (let i = 0; i < 6; i++) await new Promise((done) => setImmediate(done));
};

const step = fc.record({
  edit: jobEdit,
  /** What is typed on the way, and what becomes of it. */
  typed: fc.array(jobEdit, { maxLength: 3 }),
  end: fc.constantFrom('made', 'made at once', 'dropped', 'asked between'),
});

/** The record a change puts in place, where it does nothing else: what an entry does. */
const only = ({ changed, gone, settings, measured }: SheetChange) =>
  changed?.length === 1 && !gone?.length && !settings && measured === undefined ? changed[0] : undefined;

describe('an entry worked out while it is typed', () => {
  afterEach(() => vi.unstubAllGlobals());

  it('gives the sheet that the entries made give, and tells nothing before', async () => {
    vi.stubGlobal('Worker', NearWorker);
    await fc.assert(
      fc.asyncProperty(job, fc.array(step, { minLength: 1, maxLength: 5 }), async (first, steps) => {
        const plain = new Engine(library);
        const expected = new Map<string, CellResult>();
        const seen = new Map<string, CellResult>();
        const into = (map: Map<string, CellResult>) => (results: SheetResults) => {
          for (const cell of results.cells) map.set(cell.id, cell);
          for (const id of results.gone) map.delete(id);
        };
        const client = createEngineClient((failure) => {
          throw failure;
        });
        let told = 0;
        client.onResults((results) => {
          told++;
          into(seen)(results);
        });
        client.load(fileOf(first));
        into(expected)(plain.load(fileOf(first)));
        await quiet();
        let now = first;
        for (const { edit, typed, end } of steps) {
          const before = told;
          for (const one of typed) {
            const record = only(edited(now, one).change);
            if (record) client.prepare(record);
            if (end !== 'made at once') await quiet();
          }
          const { after, change } = edited(now, edit);
          const record = only(change);
          if (record && end !== 'dropped') client.prepare(record);
          if (end !== 'made at once') await quiet();
          if (end === 'asked between') await client.chain(now.cells[0]?.id ?? '');
          expect(told).toBe(before);
          client.update(change);
          into(expected)(plain.apply(change));
          now = after;
          await quiet();
          expect(seen).toEqual(expected);
        }
        client.close();
        plain.destroy();
      }),
      { seed: SEED, numRuns: 40 },
    );
  });

  it('is told of at once when it is made', async () => {
    vi.stubGlobal('Worker', NearWorker);
    const record = { id: 'a', role: 'given' as const, name: 'a', quantity: 'length', entry: '20 mm' };
    const below = { id: 'b', role: 'worked' as const, name: 'b', quantity: 'length', entry: '=a + 1 mm' };
    const client = createEngineClient();
    let last: SheetResults | undefined;
    client.onResults((results) => {
      last = results;
    });
    client.load({
      format: 'fitwright-sheet',
      version: 1,
      title: { title: 'typed' },
      units: { length: 'mm' },
      rule: 'worst-case',
      cells: [record, below],
    });
    await quiet();
    const made = { ...record, entry: '30 mm' };
    client.prepare(made);
    await quiet();
    last = undefined;
    client.update({ changed: [made] });
    await Promise.resolve();
    expect((last as SheetResults | undefined)?.cells.map(({ id }) => id).sort()).toEqual(['a', 'b']);
    last = undefined;
    await quiet();
    expect(last).toBeUndefined();
    client.close();
  });
});
