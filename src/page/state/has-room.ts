import { roomFor } from '../../document/room.ts';
import type { SheetContext } from './context.ts';

/** Whether so many more lines, with so many characters in all, go into the sheet; where not, it is said. */
export const hasRoom = (
  { sheet, notices }: Pick<SheetContext, 'sheet' | 'notices'>,
  lines: number,
  characters = 0,
): boolean => {
  const full = roomFor(sheet.document, lines, characters);
  if (full) notices.say(full.message);
  return !full;
};
