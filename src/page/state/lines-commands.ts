import type { SheetContext } from './context.ts';
import { hasRoom } from './has-room.ts';
import { focusCell, keepInPlace } from './in-place.ts';
import { lineRow } from './row-key.ts';
import type { Selection } from './selection.ts';

/** `Bush outside diameter`, or `3 lines`. */
export const namesOf = ({ sheet }: Pick<SheetContext, 'sheet'>, ids: readonly string[]): string =>
  ids.length === 1 ? sheet.titleOf(ids[0]!) : `${ids.length} lines`;

/** Deletes lines as one step; the cursor goes to the line below them, else above. `what` is the label undo shows. */
const deleteLines = (
  { sheet, cursor, notices }: SheetContext,
  selection: Selection,
  ids: readonly string[],
  what: 'Deleted' | 'Cut',
): void => {
  if (ids.length === 0) return;
  const { order } = sheet.state;
  const gone = new Set(ids);
  const last = order.indexOf(ids.at(-1)!);
  const next =
    order.slice(last + 1).find((id) => !gone.has(id)) ?? order.slice(0, last).findLast((id) => !gone.has(id));
  const names = namesOf({ sheet }, ids);
  cursor.setUnfolded(false);
  selection.clear();
  if (what === 'Deleted') sheet.document.deleteCells(ids);
  else sheet.document.batch(`${what.toLowerCase()} of ${names}`, () => sheet.document.deleteCells(ids));
  if (next) cursor.move({ row: lineRow(next), column: 'name' });
  notices.say(`${what} ${names}.`, { label: 'Undo', run: () => sheet.document.undo() });
};

/** Lines that are not among `ids` and take a figure of one that is, by the number and label people know them by. */
const usersOf = ({ sheet }: Pick<SheetContext, 'sheet'>, ids: readonly string[]): string[] => {
  const gone = new Set(ids);
  return [...new Set(ids.flatMap(sheet.usersOf))]
    .filter((id) => !gone.has(id))
    .map((id) => `${sheet.numberOf(id)} ${sheet.titleOf(id)}`);
};

const NAMED = 3;

/** Deletes lines; where others depend on them it asks first, and names those. */
export const askAndDelete = (
  context: SheetContext,
  selection: Selection,
  ids: readonly string[],
  what: 'Deleted' | 'Cut' = 'Deleted',
): void => {
  const users = usersOf(context, ids);
  if (users.length === 0) {
    deleteLines(context, selection, ids, what);
    return;
  }
  const more = users.length > NAMED ? ` and ${users.length - NAMED} more` : '';
  context.notices.say(
    `${users.slice(0, NAMED).join(', ')}${more} ${users.length === 1 ? 'uses' : 'use'} ${namesOf(context, ids)}: without ${ids.length === 1 ? 'it' : 'them'} ${users.length === 1 ? 'that line has' : 'those lines have'} no figure.`,
    {
      label: `${what === 'Cut' ? 'Cut' : 'Delete'} ${ids.length === 1 ? 'it' : 'them'} all the same`,
      run: () => deleteLines(context, selection, ids, what),
    },
  );
};

export const duplicateLines = (
  { sheet, cursor, notices }: SheetContext,
  selection: Selection,
  ids: readonly string[],
): void => {
  if (!hasRoom({ sheet, notices }, ids.length)) return;
  const copies = sheet.document.duplicateCells(ids);
  if (copies.length === 0) return;
  selection.set(copies);
  cursor.move({ row: lineRow(copies[0]!), column: 'name' });
  notices.say(`Copied ${namesOf({ sheet }, ids)} below.`);
};

/** Moves lines by one place, together; lines with others between them close up. */
export const moveLines = (
  { sheet, cursor, notices }: SheetContext,
  ids: readonly string[],
  way: -1 | 1,
): void => {
  const { order } = sheet.state;
  const moving = new Set(ids);
  const rest = order.filter((id) => !moving.has(id));
  const before = order.slice(0, order.indexOf(ids[0]!)).filter((id) => !moving.has(id)).length;
  const between = order.indexOf(ids.at(-1)!) - order.indexOf(ids[0]!) + 1 > ids.length;
  const to = way === -1 ? before - 1 : between ? before : before + 1;
  if (to < 0 || to > rest.length) return;
  const focused = document.activeElement?.closest('[role="grid"]');
  keepInPlace(lineRow(ids[0]!), () => sheet.document.moveCells(ids, rest[to - 1] ?? null));
  const place = cursor.place();
  if (focused && place) focusCell(place.row, place.column);
  notices.say(`Moved ${namesOf({ sheet }, ids)} ${way === -1 ? 'up' : 'down'}.`);
};
