import { takeTypedAside } from '../entry/typed-aside.ts';
import type { SheetContext } from '../state/context.ts';
import { inputRow, lineRow, type RowKey } from '../state/row-key.ts';

/** Row of the grid in which a field is typed; nothing for those of the unfolded line. */
const rowOf = (cell: string, field: string): RowKey | undefined => {
  const [part, name] = field.split('.');
  return part === 'entry' ? lineRow(cell) : part === 'inputs' && name ? inputRow(cell, name) : undefined;
};

/** Offers to go on with what was typed and not entered as this sheet's page went. */
export const offerTyped = ({ sheet, cursor, notices, goTo }: Omit<SheetContext, 'chain' | 'show'>): void => {
  const typed = takeTypedAside(sheet.document.id);
  if (!typed || !sheet.line(typed.cell)) return;
  const row = rowOf(typed.cell, typed.field);
  notices.say(
    `“${typed.text}” was typed for ${sheet.titleOf(typed.cell)} and not entered when the page was closed.`,
    {
      label: 'Go on with it',
      run: () => {
        goTo(typed.cell);
        if (row) cursor.edit(row, typed.text);
        else if (typed.field === 'measured.entry') cursor.editAsCut(lineRow(typed.cell), typed.text);
      },
    },
  );
};
