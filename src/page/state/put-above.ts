import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { SheetContext } from './context.ts';
import { hasRoom } from './has-room.ts';

/**
 * Puts a cell of the library in above a line that is to name it: one step to undo. Where there is no room, it is said.
 * @param use has the line name it
 */
export const putAbove = (
  { sheet, notices }: Pick<SheetContext, 'sheet' | 'notices'>,
  line: string,
  record: Partial<CellRecord> & { label: string },
  use: (name: string | undefined) => void,
): void => {
  if (!hasRoom({ sheet, notices }, 1)) return;
  const at = sheet.state.order.indexOf(line);
  sheet.document.batch(`new line ${record.label}`, () => {
    const id = sheet.document.addCell(
      sheet.state.order[at - 1] ?? null,
      { role: 'cell', ...record },
      { nameFromLabel: true },
    );
    use(sheet.document.cell(id)?.name);
  });
};
