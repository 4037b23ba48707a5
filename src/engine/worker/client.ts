import type { SheetFile } from '../../../shared/sheet/format.ts';
import type { SheetChange } from '../rows/change.ts';
import { withoutFigures } from '../rows/fault.ts';
import type { CellResult, SheetResults } from '../rows/results.ts';
import type { EngineClient } from './client-types.ts';
import { type Reply, type Request, UNASKED } from './messages.ts';
import { reuseUnchanged } from './reuse-unchanged.ts';

/** What a request is without its number. */
type Asked = Request extends infer R ? (R extends Request ? Omit<R, 'n'> : never) : never;

/** Tells that the engine could not answer at all: a fault of ours, never of the sheet. */
export class EngineFailure extends Error {
  override name = 'EngineFailure';
}

/** Two edits waiting for the engine, made one: the later record of a cell wins. */
function mergeChanges(first: SheetChange, second: SheetChange): SheetChange {
  const gone = new Set([...(first.gone ?? []), ...(second.gone ?? [])]);
  const changed = new Map((first.changed ?? []).map((record) => [record.id, record]));
  for (const id of second.gone ?? []) changed.delete(id);
  for (const record of second.changed ?? []) {
    changed.set(record.id, record);
    gone.delete(record.id);
  }
  const settings = second.settings ?? first.settings;
  const measured = second.measured ?? first.measured;
  return {
    changed: [...changed.values()],
    gone: [...gone],
    ...(settings ? { settings } : {}),
    ...(measured === undefined ? {} : { measured }),
  };
}

/**
 * The engine in its worker. One edit is in flight at a time; those that come meanwhile are merged into the next, so a
 * slow sheet falls behind by one edit at most.
 */
export function createEngineClient(onFailure: (failure: EngineFailure) => void = () => {}): EngineClient {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  const waiting = new Map<number, (reply: Reply) => void>();
  const listeners = new Set<(results: SheetResults) => void>();
  /** What was last told of each cell. */
  const told = new Map<string, CellResult>();
  let rev = 0;
  let next = 0;
  let busy: Promise<void> | undefined;
  let queued: { load?: SheetFile; change?: SheetChange } = {};

  const tell = (results: SheetResults): void => {
    rev = results.rev;
    for (const id of results.gone) told.delete(id);
    const cells = results.cells.map((cell) => reuseUnchanged(cell, told.get(cell.id)));
    for (const cell of cells) told.set(cell.id, cell);
    for (const listener of listeners) listener({ ...results, cells });
  };

  /** The engine does not answer: no figure that stands is known to be of now. */
  const fail = (failure: EngineFailure): void => {
    if (told.size > 0)
      tell({
        rev: rev + 1,
        gone: [],
        cells: [...told.values()].map((cell) => withoutFigures(cell, failure.message)),
      });
    onFailure(failure);
  };

  const take = (reply: Reply): void => {
    if (reply.gives === 'results') tell(reply.results);
    else if (reply.gives === 'failure') fail(new EngineFailure(reply.message));
  };

  worker.onmessage = (event: MessageEvent<Reply>) => {
    if (event.data.n === UNASKED) {
      take(event.data);
      return;
    }
    const settle = waiting.get(event.data.n);
    waiting.delete(event.data.n);
    settle?.(event.data);
  };
  const broken = new Promise<void>((settle) => {
    worker.onerror = (event) => {
      fail(new EngineFailure(event.message || 'The engine could not be started.'));
      settle();
    };
  });

  const ask = (request: Asked): Promise<Reply> =>
    new Promise((resolve) => {
      const n = next++;
      waiting.set(n, resolve);
      worker.postMessage({ ...request, n });
    });

  const work = async (): Promise<void> => {
    while (queued.load || queued.change) {
      const { load, change } = queued;
      queued = load && change ? { change } : {};
      take(await ask(load ? { ask: 'load', file: load } : { ask: 'update', change: change as SheetChange }));
    }
    busy = undefined;
  };
  const pump = (): void => {
    busy ??= work();
  };

  return {
    load(file) {
      queued = { load: file };
      pump();
    },
    update(change) {
      queued.change = queued.change ? mergeChanges(queued.change, change) : change;
      pump();
    },
    onResults(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    // Broken, it answers nothing more, and no figure of its stands.
    caughtUp: () => Promise.race([busy ?? Promise.resolve(), broken]),
    async budget(cell, output) {
      const reply = await ask({ ask: 'budget', cell, output });
      return reply.gives === 'budget' ? reply.budget : [];
    },
    async chain(cell) {
      const reply = await ask({ ask: 'chain', cell });
      return reply.gives === 'chain' ? reply.chain : { upstream: [], downstream: [] };
    },
    async example(kind, example) {
      const reply = await ask({ ask: 'example', kind, example });
      if (reply.gives === 'example') return reply.example;
      throw new EngineFailure(reply.gives === 'failure' ? reply.message : 'The engine gave no example.');
    },
    async tables() {
      const reply = await ask({ ask: 'tables' });
      return reply.gives === 'tables' ? reply.tables : [];
    },
    close() {
      worker.terminate();
      listeners.clear();
    },
  };
}
