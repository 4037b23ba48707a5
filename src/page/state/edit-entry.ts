import type { SheetContext } from './context.ts';
import { cellOfRow, isLineRow, type RowKey } from './row-key.ts';

/** A line whose author locked what stands in it; what is still to be filled in is not locked. */
const isLocked = ({ sheet }: SheetContext, row: RowKey): boolean => {
  if (!isLineRow(row)) return false;
  const record = sheet.line(cellOfRow(row))?.record;
  if (!record?.locked || !record.entry) return false;
  return record.entry.trimStart().startsWith('=') || (record.role !== 'measured' && !record.fill);
};

/** Opens the entry of a line for typing; a locked one says so first, and how to unlock it. */
export const editEntry = (context: SheetContext, row: RowKey, start?: string): void => {
  const { cursor, notices, sheet } = context;
  if (!isLocked(context, row)) {
    cursor.edit(row, start);
    return;
  }
  cursor.move({ row, column: 'entry' });
  const cell = cellOfRow(row);
  notices.say(
    sheet.document.from()
      ? `The author of the template locked “${sheet.titleOf(cell)}”. Unlocked and changed, the sheet says that it departs.`
      : `“${sheet.titleOf(cell)}” is locked.`,
    { label: 'Unlock it', run: () => sheet.document.setField(cell, 'locked', undefined) },
  );
};
