import type { SheetContext } from './context.ts';
import { cellOfRow, isLineRow, partsOfRow, type RowKey } from './row-key.ts';

/** A line whose author locked its entry; what is still to be filled in is not locked. */
export const isLocked = ({ sheet }: Pick<SheetContext, 'sheet'>, row: RowKey): boolean => {
  if (!isLineRow(row)) return false;
  const record = sheet.line(cellOfRow(row))?.record;
  if (!record?.locked || !record.entry) return false;
  return record.entry.trimStart().startsWith('=') || (record.role !== 'measured' && !record.fill);
};

/**
 * Says in its place why the entry of a locked line stays as it is, and offers to unlock it.
 * @param kept what was typed and waits for the lock
 * @param then what was to be done, once it is unlocked
 */
export const sayLocked = (
  { sheet, locked }: Pick<SheetContext, 'sheet' | 'locked'>,
  row: RowKey,
  kept: string | undefined,
  then: () => void,
): void => {
  const cell = cellOfRow(row);
  const title = sheet.titleOf(cell);
  const unlock = () => {
    locked.leave(row);
    // One press, one step: taken back, the line is locked as before and says what it said.
    sheet.document.batch(kept === undefined ? `lock of ${title}` : `entry of ${title}, unlocked`, () => {
      sheet.document.setField(cell, 'locked', undefined);
      then();
    });
  };
  const left = kept === undefined ? '' : ` “${kept}” is not entered yet.`;
  locked.say(row, {
    text: sheet.document.from()
      ? `The author of the template locked “${title}”.${left} Unlocked and changed, the sheet says that it departs.`
      : `“${title}” is locked.${left}`,
    waits: kept !== undefined,
    label: kept === undefined ? 'Unlock it' : 'Unlock it and enter that',
    unlock,
  });
};

/** Opens the entry of a line for typing; on a locked one what is typed waits until it is unlocked. */
export const editEntry = (context: SheetContext, row: RowKey, start?: string): void => {
  const { cursor } = context;
  if (start !== undefined || !isLocked(context, row)) {
    cursor.edit(row, start);
    return;
  }
  cursor.move({ row, column: 'entry' });
  sayLocked(context, row, undefined, () => cursor.edit(row));
};

/** Empties the entry under the cursor, an input of a library cell too. */
export const emptyEntry = (context: SheetContext, row: RowKey): void => {
  const { sheet, notices } = context;
  const { cell, input, output } = partsOfRow(row);
  const record = sheet.line(cell)?.record;
  const text = input === undefined ? record?.entry : record?.inputs?.[input];
  if (!text || output !== undefined) return;
  const empty = () => {
    sheet.document.setField(cell, input === undefined ? 'entry' : `inputs.${input}`, '');
    notices.say(`Emptied: ${text} is taken out of ${sheet.titleOf(cell)}.`, {
      label: 'Undo',
      run: () => sheet.document.undo(),
    });
  };
  if (isLocked(context, row)) sayLocked(context, row, undefined, empty);
  else empty();
};
