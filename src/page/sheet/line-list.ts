import { wantedLines } from '../grid/listen.ts';
import { isReadOffPart } from '../state/as-cut.ts';
import type { Command } from '../state/command.ts';
import type { SheetContext } from '../state/context.ts';
import { editEntry } from '../state/edit-entry.ts';
import { askAndDelete, duplicateLines, moveLines } from '../state/lines-commands.ts';
import { cellOfRow, isLineRow, lineRow } from '../state/row-key.ts';
import type { Tools } from '../state/tools.ts';

/** Commands on the line under the cursor. */
export const lineCommands = (context: SheetContext, { selection }: Tools): Command[] => {
  const { sheet, cursor, adding } = context;
  const cell = () => {
    const place = cursor.place();
    return place && sheet.line(cellOfRow(place.row)) ? cellOfRow(place.row) : undefined;
  };
  const can = () => cell() !== undefined;
  const group = 'This line';
  const ids = () => wantedLines(context, selection);
  return [
    {
      id: 'line.edit',
      label: 'Change the entry',
      group,
      keys: ['Enter', 'F2'],
      heard: 'lines',
      can,
      run: () => editEntry(context, cursor.place()!.row),
    },
    {
      id: 'line.measured',
      label: 'Type what it came out at',
      group,
      keys: ['Shift+F2'],
      heard: 'page',
      also: 'as measured readings actual size',
      can: () => {
        const record = sheet.line(cell() ?? '')?.record;
        const place = cursor.place();
        return (
          place !== undefined && isLineRow(place.row) && record !== undefined && isReadOffPart(sheet, record)
        );
      },
      run: () => cursor.editAsCut(lineRow(cell()!)),
    },
    {
      id: 'line.unfold',
      label: 'Unfold or fold the line',
      group,
      keys: ['Enter'],
      heard: 'lines',
      also: 'open details budget formula limits',
      can,
      run: () => cursor.setUnfolded(!cursor.unfolded()),
    },
    { id: 'line.fold', label: 'Fold the line', group, keys: ['Escape'], heard: 'lines' },
    {
      id: 'line.add',
      label: 'Add a line below',
      group,
      keys: ['Insert', 'Alt+Enter'],
      heard: 'lines',
      also: 'new insert',
      run: () => adding.begin(cell() ?? null),
    },
    {
      id: 'line.duplicate',
      label: 'Copy it below',
      group,
      also: 'duplicate',
      can,
      run: () => duplicateLines(context, selection, ids()),
    },
    {
      id: 'line.up',
      label: 'Move up',
      group,
      keys: ['Alt+↑'],
      heard: 'lines',
      can,
      run: () => moveLines(context, ids(), -1),
    },
    {
      id: 'line.down',
      label: 'Move down',
      group,
      keys: ['Alt+↓'],
      heard: 'lines',
      can,
      run: () => moveLines(context, ids(), 1),
    },
    {
      id: 'line.lock',
      label: 'Lock or unlock the line',
      group,
      can,
      run: () => {
        const id = cell()!;
        sheet.document.setField(id, 'locked', sheet.line(id)?.record.locked ? undefined : true);
      },
    },
    {
      id: 'line.delete',
      label: 'Delete the line',
      group,
      keys: ['Delete'],
      heard: 'lines',
      also: 'remove',
      can,
      run: () => askAndDelete(context, selection, ids()),
    },
  ];
};
