import type { EngineClient } from '../../engine/worker/client-types.ts';
import { late } from '../kit/late.tsx';

export const PrintSheet = late('What goes on paper', () => import('./print-sheet.tsx'));

/** Fetches what paper needs ahead of time: the browser's own command to print takes the page as it is, and waits for nothing. */
export const readyPaper = (): Promise<unknown> => PrintSheet.preload();

/** Prints the sheet once all of it is there, the figures of an entry taken by that very press too. */
export const printSheet = (engine: Pick<EngineClient, 'caughtUp'>): void => {
  void Promise.all([readyPaper().catch(() => undefined), engine.caughtUp()])
    // They are drawn in a task of their own.
    .then(() => new Promise((done) => setTimeout(done)))
    .then(() => print());
};
