import { batch } from 'solid-js';

/** Longest wait for the figures before an entry is shown without them, ms: too short to be noticed. */
const LONGEST = 50;

interface Waiting {
  /** Drawn together with the figures. */
  work: Array<() => void>;
  /** Once they are drawn. */
  after: Array<() => void>;
}

let waiting: Waiting | undefined;
let timer: ReturnType<typeof setTimeout> | undefined;

/**
 * From now on what {@link withFigures} is given waits for the figures of the edit that was just handed to the engine, so
 * that entry and figures are drawn once. A page that changes at the key itself is drawn first, and the browser
 * holds the engine's answer back until that is done.
 */
export const awaitFigures = (): void => {
  if (waiting) return;
  waiting = { work: [], after: [] };
  timer = setTimeout(showWaiting, LONGEST);
  addEventListener('keydown', showWaiting, true);
  addEventListener('pointerdown', showWaiting, true);
};

/** Runs `work` at once, or together with the figures where they are awaited. */
export const withFigures = (work: () => void): void => {
  if (waiting) waiting.work.push(work);
  else work();
};

/** Runs `work` at once, or behind the figures where they are awaited: what the figures should not wait for. */
export const behindFigures = (work: () => void): void => {
  if (waiting) waiting.after.push(work);
  else work();
};

/** Runs what waits, in its order, and `settle` as one change of the page, then what goes behind them. */
const drawWaiting = (settle: () => void): void => {
  const { work = [], after = [] } = waiting ?? {};
  if (waiting) {
    waiting = undefined;
    clearTimeout(timer);
    removeEventListener('keydown', showWaiting, true);
    removeEventListener('pointerdown', showWaiting, true);
  }
  batch(() => {
    for (const one of work) one();
    settle();
  });
  for (const one of after) one();
};

/**
 * Writes the figures of an edit down, then makes them known with all that waits for them: in the same task and the same
 * frame, but the figures first, for they are what is watched for.
 */
export const drawFigures = (write: () => void, settle: () => void): void => {
  write();
  queueMicrotask(() => drawWaiting(settle));
};

/**
 * Runs what waits without the figures: a key or press meanwhile is meant for the page as it is after the edit, with the
 * focus where the entry leaves it.
 */
const showWaiting = (): void => drawWaiting(() => undefined);
