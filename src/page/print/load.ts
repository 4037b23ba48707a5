import { late } from '../kit/late.tsx';

export const PrintSheet = late('What goes on paper', () => import('./print-sheet.tsx'));

/** Fetches what paper needs ahead of time: the browser's own command to print takes the page as it is, and waits for nothing. */
export const readyPaper = (): Promise<unknown> => PrintSheet.preload();

/** Prints the sheet once all of it is there. */
export const printSheet = (): void => {
  void readyPaper()
    .catch(() => undefined)
    .then(() => print());
};
