import type { RowKey } from './row-key.ts';

/** The row's element in the grid. */
export const rowElement = (row: RowKey): HTMLElement | undefined =>
  document.querySelector<HTMLElement>(`[data-row="${CSS.escape(row)}"]`) ?? undefined;

/** Runs a change that folds and unfolds lines, and scrolls so that `row` stays where it is on the screen. */
export const keepInPlace = (row: RowKey, change: () => void): void => {
  const before = rowElement(row)?.getBoundingClientRect().top;
  change();
  const after = rowElement(row)?.getBoundingClientRect().top;
  if (before !== undefined && after !== undefined && after !== before) scrollBy(0, after - before);
};

/** Scrolls the least that brings a row between the bars at the top and the bottom edge. */
export const bringIntoView = (row: RowKey): void => {
  const element = rowElement(row);
  if (!element) return;
  const box = element.getBoundingClientRect();
  const top = document.querySelector('.toolbar')?.getBoundingClientRect().bottom ?? 0;
  const bottom = innerHeight - (document.querySelector('.next-entry')?.getBoundingClientRect().height ?? 0);
  if (box.top < top) scrollBy(0, box.top - top - 8);
  else if (box.bottom > bottom) scrollBy(0, Math.min(box.bottom - bottom + 8, box.top - top - 8));
};

const SETTLED = 250;

/** Scrolls a row to the upper part of the screen, with what stands above it still in view; again once all has unfolded. */
export const bringUp = (row: RowKey): void => {
  scrollUp(row);
  setTimeout(() => scrollUp(row), SETTLED);
};

const scrollUp = (row: RowKey): void => {
  const box = rowElement(row)?.getBoundingClientRect();
  if (!box) return;
  const top = document.querySelector('.toolbar')?.getBoundingClientRect().bottom ?? 0;
  scrollBy(0, box.top - top - (innerHeight - top) / 5);
};

/** How much of what unfolds should be seen at once. */
const GLIMPSE = 260;

/** Scrolls so far that some of what unfolds below a row is seen, the row itself staying on the screen. */
export const revealBelow = (row: RowKey): void => {
  requestAnimationFrame(() => {
    const box = rowElement(row)?.getBoundingClientRect();
    if (!box) return;
    const top = document.querySelector('.toolbar')?.getBoundingClientRect().bottom ?? 0;
    const wanted = box.bottom + GLIMPSE - innerHeight;
    if (wanted > 0) scrollBy(0, Math.min(wanted, box.top - top - 8));
  });
};

/** Gives the focus back to a cell of the grid whose element was taken out and put in elsewhere. */
export const focusCell = (row: RowKey, column: string): void => {
  rowElement(row)?.querySelector<HTMLElement>(`[data-column="${column}"]`)?.focus({ preventScroll: true });
};
