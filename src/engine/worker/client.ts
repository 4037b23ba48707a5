import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import { isOnly, recordText, type SheetChange } from '../rows/change.ts';
import type { CellResult, SheetResults } from '../rows/results.ts';
import type { EngineClient } from './client-types.ts';
import { type Reply, type Request, UNASKED } from './messages.ts';
import { Unpacker } from './packed.ts';

/** What a request is without its number. */
type Asked = Request extends infer R ? (R extends Request ? Omit<R, 'n'> : never) : never;

/** Tells that the engine could not answer at all: a fault of ours, never of the sheet. */
export class EngineFailure extends Error {
  override name = 'EngineFailure';
}

/** Two edits waiting for the engine, made one: the later record of a cell wins. */
export function mergeChanges(first: SheetChange, second: SheetChange): SheetChange {
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
  const unpacker = new Unpacker();
  let next = 0;
  let busy = false;
  let preparing = false;
  /** What is to be prepared next, where the engine is still at the last one. */
  let typed: CellRecord | undefined;
  /** {@link recordText} of what the engine prepared last, where it has done nothing since. */
  let prepared: string | undefined;
  /** Results that the listeners have not been told of. */
  const untold = { rev: 0, cells: new Map<string, CellResult>(), gone: new Set<string>() };
  let told = 0;
  let queued: { load?: SheetFile; change?: SheetChange } = {};

  worker.onmessage = (event: MessageEvent<Reply>) => {
    if (event.data.n === UNASKED) {
      takeUnasked(event.data);
      return;
    }
    const settle = waiting.get(event.data.n);
    waiting.delete(event.data.n);
    settle?.(event.data);
  };
  worker.onerror = (event) =>
    onFailure(new EngineFailure(event.message || 'The engine could not be started.'));

  const ask = (request: Asked): Promise<Reply> =>
    new Promise((resolve) => {
      const n = next++;
      waiting.set(n, resolve);
      worker.postMessage({ ...request, n });
    });

  const fail = (reply: Reply): void => {
    if (reply.gives === 'failure') onFailure(new EngineFailure(reply.message));
  };

  /** Tells the listeners of everything they have not been told. */
  const tell = (): void => {
    const { rev } = untold;
    if (rev === told) return;
    told = rev;
    const cells = [...untold.cells.values()];
    const gone = [...untold.gone];
    untold.cells.clear();
    untold.gone.clear();
    for (const listener of listeners) listener({ rev, cells, gone });
  };

  const keep = ({ rev, cells, gone }: SheetResults): void => {
    untold.rev = rev;
    for (const cell of cells) untold.cells.set(cell.id, cell);
    for (const id of gone) {
      untold.cells.delete(id);
      untold.gone.add(id);
    }
  };

  const takeUnasked = (reply: Reply): void => {
    if (reply.gives !== 'results') {
      fail(reply);
      return;
    }
    // It is of the sheet as it is, without what was prepared.
    prepared = undefined;
    keep(unpacker.unpack(reply.results));
    tell();
  };

  const prepare = async (): Promise<void> => {
    preparing = true;
    while (typed && !busy) {
      const record = typed;
      typed = undefined;
      prepared = undefined;
      const reply = await ask({ ask: 'prepare', record });
      if (reply.gives === 'prepared') {
        keep(unpacker.unpack(reply.results));
        if (!busy) prepared = recordText(record);
      } else fail(reply);
    }
    preparing = false;
  };

  const pump = async (): Promise<void> => {
    if (busy) return;
    busy = true;
    while (queued.load || queued.change) {
      const { load, change } = queued;
      queued = load && change ? { change } : {};
      const reply = await ask(
        load ? { ask: 'load', file: load } : { ask: 'update', change: change as SheetChange },
      );
      if (reply.gives === 'results') {
        keep(unpacker.unpack(reply.results));
        tell();
      } else fail(reply);
    }
    busy = false;
  };

  return {
    load(file) {
      prepared = undefined;
      queued = { load: file };
      void pump();
    },
    update(change) {
      // What was prepared is shown at once; the engine is told of it all the same.
      if (prepared !== undefined && isOnly(change, prepared)) queueMicrotask(tell);
      prepared = undefined;
      typed = undefined;
      queued.change = queued.change ? mergeChanges(queued.change, change) : change;
      void pump();
    },
    prepare(record) {
      typed = record;
      if (!preparing) void prepare();
    },
    onResults(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
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
