import type { GrowingLibrary } from '../../../cells/growing-library.ts';
import { kindsOf } from '../rows/kinds-of.ts';
import type { Library } from '../rows/library.ts';
import { createAnswer, fetchExamples, lacksExamples } from './answer.ts';
import type { Reply, Request } from './messages.ts';

/** Milliseconds that an answer waits for kinds of cell. What takes longer is reported when it comes. */
const PATIENCE = 10_000;

/** Milliseconds of drawing between two looks for a request: half a frame. What comes out does not depend on it. */
const SLICE = 8;

/**
 * The worker's queue of requests. Answers them strictly in their order, by a library that is fetched as it is used: each waits for the kinds of cell
 * it names, and one that names none that is not there is answered at once. Where a kind cannot be fetched the answer is
 * given without it, so that the other lines are not lost; it is tried again with every request, and when it comes the
 * lines that wanted it are told of unasked.
 */
export function createQueue(
  library: GrowingLibrary,
  post: (reply: Reply) => void,
): (request: Request) => void {
  const answering = createAnswer(library);
  const { answer, renew } = answering;
  const behind: Request[] = [];
  let waiting = false;
  /** Kinds that lines of the sheet were answered without. */
  const late = new Set<string>();

  let fetching = false;
  /** A request came while they were being fetched: if that fails, it has had no attempt of its own. */
  let again = false;
  /** Draws go on in slices between requests, so that none waits for them. */
  let drawing = false;
  const drawOn = (): void => {
    if (drawing || !answering.isSettling) return;
    drawing = true;
    setTimeout(() => {
      drawing = false;
      const until = performance.now() + SLICE;
      do {
        const reply = answering.draw();
        if (reply) post(reply);
        if (reply?.gives === 'failure') return;
      } while (answering.isSettling && performance.now() < until);
      drawOn();
    }, 0);
  };

  const fetchLate = async (): Promise<void> => {
    if (fetching) {
      again = true;
      return;
    }
    fetching = true;
    do {
      again = false;
      await library.fetch(late);
      const came = [...late].filter((kind) => !library.lacks(kind));
      for (const kind of came) late.delete(kind);
      if (came.length > 0) post(renew());
    } while (again && late.size > 0);
    fetching = false;
  };

  const finish = (request: Request): void => {
    if (request.ask !== 'example')
      for (const kind of namedIn(request, library)) if (library.lacks(kind)) late.add(kind);
    post(answer(request));
    drawOn();
    if (late.size > 0) void fetchLate();
  };

  const waitFor = async (request: Request): Promise<void> => {
    waiting = true;
    const examples = lacksExamples(request) ? fetchExamples() : undefined;
    await within(PATIENCE, Promise.all([fetchFor(request, library), examples]));
    waiting = false;
    finish(request);
    while (!waiting && behind.length > 0) receive(behind.shift() as Request);
  };

  const receive = (request: Request): void => {
    if (waiting) behind.push(request);
    // Nobody waits a second time for what did not come.
    else if (
      lacksExamples(request) ||
      namedIn(request, library).some((kind) => library.lacks(kind) && !late.has(kind))
    )
      void waitFor(request);
    else finish(request);
  };
  return receive;
}

/** Kinds of cell that a request names. */
function namedIn(request: Request, library: Library): readonly string[] {
  switch (request.ask) {
    case 'load':
      return kindsOf(request.file.cells);
    case 'update':
      return kindsOf(request.change.changed ?? []);
    case 'example': {
      const records = library.kinds.get(request.kind)?.inputs.flatMap(({ record }) => record ?? []);
      return [request.kind, ...(records ?? [])];
    }
    default:
      return [];
  }
}

async function fetchFor(request: Request, library: GrowingLibrary): Promise<void> {
  await library.fetch(namedIn(request, library));
  // Which records an example takes is known once its kind is there.
  await library.fetch(namedIn(request, library));
}

function within(ms: number, work: Promise<unknown>): Promise<unknown> {
  let timer: ReturnType<typeof setTimeout>;
  const enough = new Promise<void>((done) => {
    timer = setTimeout(done, ms);
  });
  return Promise.race([work, enough]).finally(() => clearTimeout(timer));
}
