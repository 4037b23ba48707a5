import type { SheetContext } from './context.ts';
import { focusCell, keepInPlace } from './in-place.ts';

/** Deletes a line and says how to get it back; the cursor goes to the one below, or above. */
export const deleteLine = ({ sheet, cursor, notices }: SheetContext, cell: string): void => {
  const order = sheet.state.order;
  const at = order.indexOf(cell);
  const next = order[at + 1] ?? order[at - 1];
  const title = sheet.titleOf(cell);
  cursor.setUnfolded(false);
  sheet.document.deleteCells([cell]);
  if (next) cursor.move({ row: next, column: 'name' });
  notices.say(`Deleted ${title}.`, { label: 'Undo', run: () => sheet.document.undo() });
};

export const duplicateLine = ({ sheet, cursor, notices }: SheetContext, cell: string): void => {
  const [copy] = sheet.document.duplicateCells([cell]);
  if (!copy) return;
  notices.say(`Copied ${sheet.titleOf(cell)}.`);
  cursor.move({ row: copy, column: 'name' });
};

/** Moves a line up or down by one. */
export const moveLine = ({ sheet, cursor, notices }: SheetContext, cell: string, way: -1 | 1): void => {
  const order = sheet.state.order;
  const at = order.indexOf(cell);
  const over = at + way;
  if (at < 0 || over < 0 || over >= order.length) return;
  const after = way === 1 ? order[over]! : (order[over - 1] ?? null);
  const focused = document.activeElement?.closest('[role="grid"]');
  keepInPlace(cell, () => sheet.document.moveCell(cell, after));
  const place = cursor.place();
  if (focused && place) focusCell(place.row, place.column);
  const above = sheet.state.order[sheet.state.order.indexOf(cell) - 1];
  notices.say(above ? `Moved below ${sheet.titleOf(above)}.` : 'Moved to the top.');
};
