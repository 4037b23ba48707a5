import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { library as whole } from '../../cells/catalogue.ts';
import type { GrowingLibrary } from '../../cells/growing-library.ts';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { computeSheet } from '../../src/engine/compute.ts';
import { Engine } from '../../src/engine/engine.ts';
import { kindsOf } from '../../src/engine/rows/kinds-of.ts';
import type { CellResult, SheetResults } from '../../src/engine/rows/results.ts';
import { createAnswer, fetchExamples } from '../../src/engine/worker/answer.ts';
import { createEngineClient } from '../../src/engine/worker/client.ts';
import type { Reply, Request } from '../../src/engine/worker/messages.ts';
import { createQueue } from '../../src/engine/worker/queue.ts';
import { onUse } from '../cells/on-use.ts';
import { sheetOf, templates } from '../templates/shelf.ts';
import { walk } from '../walk.ts';
import { edited, fileOf, job, jobEdit } from './random-job.ts';

const SEED = 20261128;

const quiet = async () => {
  for (let i = 0; i < 12; i++) await new Promise((done) => setImmediate(done));
};

/** The worker's side in this thread. */
const nearWorker = (library: GrowingLibrary) =>
  class {
    onmessage: ((event: { data: Reply }) => void) | undefined;
    private readonly receive = createQueue(library, (reply) => {
      const handed = structuredClone(reply);
      setImmediate(() => this.onmessage?.({ data: handed }));
    });

    postMessage(request: Request): void {
      const handed = structuredClone(request);
      setImmediate(() => this.receive(handed));
    }

    terminate(): void {}
  };

/** A client of an engine whose library is fetched, and what it has been told of each cell. */
const client = (library: GrowingLibrary) => {
  vi.stubGlobal('Worker', nearWorker(library));
  const made = createEngineClient((failure) => {
    throw failure;
  });
  const seen = new Map<string, CellResult>();
  made.onResults(taking(seen));
  return { ...made, seen };
};

const taking = (into: Map<string, CellResult>) => (results: SheetResults) => {
  for (const cell of results.cells) into.set(cell.id, cell);
  for (const id of results.gone) into.delete(id);
};

const expected = (file: SheetFile): Map<string, CellResult> => {
  const engine = new Engine(whole);
  const found = new Map<string, CellResult>();
  taking(found)(engine.load(file));
  engine.destroy();
  return found;
};

const sheet = (...cells: CellRecord[]): SheetFile => ({
  format: 'fitwright-sheet',
  version: 2,
  title: { title: 'on use' },
  units: { length: 'mm' },
  rule: 'worst-case',
  cells,
});

const bore: CellRecord = {
  id: 'a',
  role: 'given',
  name: 'bore',
  quantity: 'length',
  entry: '20 mm ± 0.1 mm',
};
const twice: CellRecord = { id: 'b', role: 'worked', name: 'twice', quantity: 'length', entry: '=2 * bore' };
const stock: CellRecord = {
  id: 'c',
  role: 'cell',
  kind: 'wall-left',
  name: 'wall',
  inputs: { bore: '=bore', outside: '30 mm', offset: '0 mm' },
};

afterEach(() => vi.unstubAllGlobals());

describe('an engine whose library is fetched as it is used', () => {
  it('answers a request that needs nothing new before it returns, others in their order', async () => {
    const { library, asked } = onUse();
    const given: Reply[] = [];
    const receive = createQueue(library, (reply) => given.push(reply));
    receive({ n: 0, ask: 'load', file: sheet(bore, twice) });
    expect(given.map(({ n }) => n)).toEqual([0]);
    receive({ n: 1, ask: 'update', change: { changed: [stock] } });
    receive({ n: 2, ask: 'budget', cell: 'b', output: 'value' });
    receive({ n: 3, ask: 'update', change: { changed: [{ id: 'd', role: 'cell', kind: 'gauge' }] } });
    receive({ n: 4, ask: 'chain', cell: 'a' });
    expect(given.map(({ n }) => n)).toEqual([0]);
    await quiet();
    expect(given.map(({ n, gives }) => [n, gives])).toEqual([
      [0, 'results'],
      [1, 'results'],
      [2, 'budget'],
      [3, 'results'],
      [4, 'chain'],
    ]);
    expect(asked).toEqual(['kinds/wall-left', 'kinds/gauge', 'choices/gauges']);
    receive({ n: 5, ask: 'update', change: { changed: [{ ...stock, label: 'again' }] } });
    expect(given.at(-1)?.n).toBe(5);
  });

  it.each(templates)('gives what the whole library gives, from its own kinds alone: %s', async (name) => {
    const file = sheetOf(name);
    const { library } = onUse();
    const { load, seen, close } = client(library);
    load(file);
    await quiet();
    expect(seen).toEqual(expected(file));
    expect([...library.kinds.keys()].sort()).toEqual([...kindsOf(file.cells)].sort());
    close();
  });

  it('gives what the whole library gives over random sheets of every kind of cell, and every edit', async () => {
    await fc.assert(
      fc.asyncProperty(job, fc.array(jobEdit, { maxLength: 5 }), async (first, edits) => {
        const { load, update, seen, close } = client(onUse().library);
        const engine = new Engine(whole);
        const kept = new Map<string, CellResult>();
        load(fileOf(first));
        taking(kept)(engine.load(fileOf(first)));
        await quiet();
        expect(seen).toEqual(kept);
        let now = first;
        for (const edit of edits) {
          const { after, change } = edited(now, edit);
          now = after;
          update(change);
          taking(kept)(engine.apply(change));
          await quiet();
          expect(seen).toEqual(kept);
        }
        close();
        engine.destroy();
      }),
      { seed: SEED, numRuns: walk(10, 250) },
    );
  });

  it('says of a kind that there is not what the whole library says', async () => {
    const file = sheet(bore, { ...stock, kind: 'no-such-kind' }, { ...twice, entry: '=wall.thinnest' });
    const { load, seen, close } = client(onUse().library);
    load(file);
    await quiet();
    expect(seen).toEqual(expected(file));
    close();
  });

  it('works an example out with what it takes as records', async () => {
    const { library } = onUse();
    const { example, close } = client(library);
    await fetchExamples();
    for (const kind of whole.kinds.values()) {
      const first = kind.examples[0]!;
      const { answer } = createAnswer(whole);
      const got = answer({ n: 0, ask: 'example', kind: kind.key, example: first });
      expect(await example(kind.key, first)).toEqual('example' in got && got.example);
    }
    close();
  });
});

describe('where a kind of cell cannot be fetched', () => {
  const file = sheet(bore, twice, stock, { ...twice, id: 'd', name: 'after', entry: '=2 * wall.thinnest' });

  it('tells so on its lines with what to do, works the others out, and tries again', async () => {
    const { library, away, asked } = onUse();
    away.add('kinds/wall-left');
    const { load, update, seen, close } = client(library);
    load(file);
    await quiet();
    const without = computeSheet(file, whole);
    expect(seen.get('b')).toEqual(without.byName('twice'));
    expect(seen.get('c')?.problems[0]?.message).toMatch(/wall-left.*could not be fetched.*again/);
    expect(JSON.stringify(seen.get('d'))).toContain('which could not be fetched');
    const before = asked.length;
    update({ changed: [{ ...bore, entry: '21 mm' }] });
    await quiet();
    expect(asked.length).toBeGreaterThan(before);
    expect(seen.get('b')?.outputs.value?.planned?.value).toBeCloseTo(0.042, 12);
    // It is there again: the next edit, of another line, brings it.
    away.clear();
    update({ changed: [bore] });
    await quiet();
    expect(seen).toEqual(expected(file));
    close();
  });

  it('tries again for an entry made while it is being fetched in vain', async () => {
    const { library, away, asked } = onUse();
    away.add('kinds/wall-left');
    const given: Reply[] = [];
    const receive = createQueue(library, (reply) => given.push(reply));
    receive({ n: 0, ask: 'load', file: sheet(bore, twice, stock) });
    await quiet();
    // The attempt that this entry causes is under way, and fails; the next comes meanwhile.
    receive({ n: 1, ask: 'update', change: { changed: [bore] } });
    const before = asked.length;
    receive({ n: 2, ask: 'update', change: { changed: [{ ...bore, entry: '21 mm' }] } });
    expect(asked.length).toBe(before);
    await quiet();
    expect(asked.length).toBe(before + 1);
    // It is there again just after the attempt that is under way has begun.
    receive({ n: 3, ask: 'update', change: { changed: [bore] } });
    await new Promise((done) => setImmediate(done));
    receive({ n: 4, ask: 'update', change: { changed: [bore] } });
    await Promise.resolve();
    away.clear();
    await quiet();
    const last = given.at(-1);
    expect(last?.n).toBe(-1);
    expect(last?.gives === 'results' && last.results.cells.find(({ id }) => id === 'c')?.problems).toEqual(
      [],
    );
  });

  it('refuses an example of it, and gives it later', async () => {
    const { library, away } = onUse();
    away.add('kinds/wall-left');
    const { example, close } = client(library);
    const first = whole.kinds.get('wall-left')!.examples[0]!;
    await expect(example('wall-left', first)).rejects.toThrow('could not be fetched');
    away.clear();
    expect((await example('wall-left', first)).expected.every(({ holds }) => holds)).toBe(true);
    close();
  });

  it('waits no more than so long, and tells of it when it comes after all', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const { library } = onUse();
    let come = (): void => undefined;
    const slow = new Promise<void>((done) => {
      come = done;
    });
    const { fetch } = library;
    vi.spyOn(library, 'fetch').mockImplementation(async (kinds) => {
      await slow;
      return fetch.call(library, kinds);
    });
    const { load, seen, close } = client(library);
    load(file);
    await quiet();
    expect(seen.size).toBe(0);
    await vi.advanceTimersByTimeAsync(20_000);
    await quiet();
    expect(seen.get('b')?.outputs.value?.planned?.value).toBeCloseTo(0.04, 12);
    expect(seen.get('c')?.outputs).toEqual({});
    vi.useRealTimers();
    come();
    await quiet();
    expect(seen).toEqual(expected(file));
    close();
  });
});
