import type { SheetContext } from './context.ts';
import { focusCell, rowElement } from './in-place.ts';
import { cellOfRow, lineRow } from './row-key.ts';

/** Nobody has the focus, or what can have it no more: the browser takes it away with the next frame. */
const isNowhere = (active: Element | null): boolean =>
  active === null || active === document.body || active.matches(':disabled');

/**
 * Brings a focus that is nowhere back to the line under the cursor: what had it was taken away. Where that line has gone
 * too, to the one that takes its place.
 */
export const focusWork = ({ sheet, cursor }: Pick<SheetContext, 'sheet' | 'cursor'>): void => {
  if (!isNowhere(document.activeElement)) return;
  const place = cursor.place();
  if (!place) return;
  const { row, column } = place;
  if (rowElement(row)) {
    focusCell(row, column);
    return;
  }
  const cell = cellOfRow(row);
  const [first] = sheet.state.order;
  const next = rowElement(lineRow(cell)) ? lineRow(cell) : first && lineRow(first);
  if (!next) return;
  cursor.move({ row: next, column: 'name' });
  focusCell(next, 'name');
};
