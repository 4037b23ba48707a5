import { GuardedEngine } from '../guarded-engine.ts';
import { type Library, notFetched } from '../rows/library.ts';
import { type Reply, type Request, UNASKED } from './messages.ts';

/** Worked examples are for the book alone: their script is fetched as it is opened. */
let examples: typeof import('../book/worked-example.ts') | undefined;

/** Resolves where they are there, or not to be had. */
export const fetchExamples = async (): Promise<void> => {
  examples ??= await import('../book/worked-example.ts').catch(() => undefined);
};

export const lacksExamples = (request: Request): boolean => request.ask === 'example' && !examples;

export interface Answering {
  answer(request: Request): Reply;
  /** The whole sheet by the library as it is now, unasked. */
  renew(): Reply;
  /** A block of draws for verdicts that wait for them; what that settled, unasked. */
  draw(): Reply | undefined;
  readonly isSettling: boolean;
}

/** The far side of {@link createEngineClient}: one engine that answers its requests, in their order. */
export function createAnswer(library: Library): Answering {
  const engine = new GuardedEngine(library);
  const answer = (request: Request): Reply => {
    const { n } = request;
    switch (request.ask) {
      case 'load':
        return { n, gives: 'results', results: engine.load(request.file) };
      case 'update':
        return { n, gives: 'results', results: engine.apply(request.change) };
      case 'budget':
        return { n, gives: 'budget', budget: engine.budget(request.cell, request.output) };
      case 'tables':
        return { n, gives: 'tables', tables: engine.tables() };
      case 'chain':
        return { n, gives: 'chain', chain: engine.chain(request.cell) };
      case 'example': {
        const kind = library.kinds.get(request.kind);
        const away = [request.kind, ...(kind?.inputs ?? []).flatMap(({ record }) => record ?? [])].find(
          (one) => library.lacks?.(one),
        );
        if (away !== undefined || !examples)
          return { n, gives: 'failure', message: notFetched(away ?? request.kind) };
        if (!kind) return { n, gives: 'failure', message: `The library has no ${request.kind}.` };
        return { n, gives: 'example', example: examples.workOut(library, kind, request.example) };
      }
    }
  };
  const guarded = (n: number, reply: () => Reply): Reply => {
    try {
      return reply();
    } catch (thrown) {
      return { n, gives: 'failure', message: thrown instanceof Error ? thrown.message : String(thrown) };
    }
  };
  return {
    answer: (request) => guarded(request.n, () => answer(request)),
    draw: () => {
      const results = engine.draw();
      return results.cells.length > 0 ? { n: UNASKED, gives: 'results', results } : undefined;
    },
    get isSettling() {
      return engine.isSettling;
    },
    renew: () => guarded(UNASKED, () => ({ n: UNASKED, gives: 'results', results: engine.renew() })),
  };
}
