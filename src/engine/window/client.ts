import type { SheetFile } from '../../../shared/sheet/format.ts';
import type { Answers, Asked, TrialReply } from './messages.ts';

interface Waiting {
  settle(reply: TrialReply | undefined): void;
  onProgress?: ((done: number, of: number) => void) | undefined;
}

let worker: Worker | undefined;
let next = 0;
const waiting = new Map<number, Waiting>();

function theWorker(): Worker {
  if (worker) return worker;
  const made = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  made.onmessage = ({ data }: MessageEvent<TrialReply>) => {
    const one = waiting.get(data.n);
    if (data.gives === 'progress') {
      one?.onProgress?.(data.done, data.of);
      return;
    }
    waiting.delete(data.n);
    one?.settle(data);
  };
  made.onerror = (event) =>
    end((n) => ({ n, gives: 'failure', message: event.message || 'It could not be started.' }));
  worker = made;
  return made;
}

/** Ends the worker, with all it was asked. */
function end(reply: (n: number) => TrialReply | undefined): void {
  worker?.terminate();
  worker = undefined;
  const all = [...waiting];
  waiting.clear();
  for (const [n, one] of all) one.settle(reply(n));
}

/** Something asked of a sheet, under way in a worker of its own. */
export interface Trying<T> {
  /** Undefined where it was cancelled. Rejects where it could not be carried out: a fault of ours. */
  result: Promise<T | undefined>;
  /** Ends the worker at once, with whatever else it was asked. */
  cancel(): void;
}

/** Tries something on a copy of a sheet, so that the sheet stays at hand meanwhile. `rev` tells one state of it from another. */
export function tryOn<K extends keyof Answers>(
  file: SheetFile,
  rev: string,
  asked: Extract<Asked, { ask: K }>,
  onProgress?: (done: number, of: number) => void,
): Trying<Answers[K]> {
  const n = next++;
  const result = new Promise<Answers[K] | undefined>((resolve, reject) => {
    waiting.set(n, {
      onProgress,
      settle: (reply) => {
        if (!reply) resolve(undefined);
        else if ('answer' in reply) resolve(reply.answer as Answers[K]);
        else reject(new Error(reply.gives === 'failure' ? reply.message : ''));
      },
    });
  });
  theWorker().postMessage({ n, file, rev, asked });
  return {
    result,
    cancel: () => {
      if (waiting.has(n)) end(() => undefined);
    },
  };
}
