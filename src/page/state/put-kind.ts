import type { CellKind } from '../../../cells/record/cell.ts';
import type { SheetContext } from './context.ts';
import { hasRoom } from './has-room.ts';
import { lineRow } from './row-key.ts';

/** Puts a cell of the library in below a line, or the whole section it judges, as one step. */
export const putKind = (
  { sheet, cursor, notices }: Pick<SheetContext, 'sheet' | 'cursor' | 'notices'>,
  after: string | null,
  { key, edition, title, section }: CellKind,
  done?: () => void,
): void => {
  if (!hasRoom({ sheet, notices }, section?.length ?? 1)) return;
  const id = section
    ? sheet.document.insertCells(after, section, title)[0]!
    : sheet.document.addCell(
        after,
        { role: 'cell', kind: key, edition, label: title },
        { nameFromLabel: true },
      );
  done?.();
  cursor.setUnfolded(!section);
  cursor.move({ row: lineRow(id), column: 'name' });
};
