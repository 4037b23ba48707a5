import { lazy } from 'solid-js';

export const PrintSheet = lazy(() => import('./print-sheet.tsx'));

/** Fetches what paper needs ahead of time: the browser's own command to print takes the page as it is, and waits for nothing. */
export const readyPaper = (): Promise<unknown> => PrintSheet.preload();

/** Prints the sheet once all of it is there. */
export const printSheet = (): void => {
  void readyPaper()
    .catch(() => undefined)
    .then(() => print());
};
