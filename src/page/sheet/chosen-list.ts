import { copyLines, pasteByButton, wantedLines } from '../grid/listen.ts';
import type { Command } from '../state/command.ts';
import type { SheetContext } from '../state/context.ts';
import { cellOfRow } from '../state/row-key.ts';
import type { Tools } from '../state/tools.ts';

/** Commands on lines chosen together, and how to choose them. */
export const chosenCommands = (context: SheetContext, { selection }: Tools): Command[] => {
  const { cursor, sheet } = context;
  const group = 'Chosen lines';
  const ids = () => wantedLines(context, selection);
  const can = () => ids().length > 0;
  return [
    {
      id: 'chosen.extend',
      label: 'Choose lines as far as here',
      group,
      keys: ['Shift+↑', 'Shift+↓'],
      heard: 'lines',
    },
    {
      id: 'chosen.toggle',
      label: 'Choose this line, or leave it out',
      group,
      keys: ['Shift+Space'],
      heard: 'lines',
      also: 'select',
      can: () => cursor.place() !== undefined,
      run: () => selection.toggle(cellOfRow(cursor.place()!.row)),
    },
    {
      id: 'chosen.tick',
      label: 'Choose lines by ticking them',
      group,
      also: 'select several',
      run: () => selection.setTicking(true),
    },
    {
      id: 'chosen.all',
      label: 'Choose all lines',
      group,
      keys: ['Ctrl+A'],
      heard: 'lines',
      also: 'select',
      can: () => sheet.state.order.length > 0,
      run: () => selection.all(),
    },
    {
      id: 'chosen.none',
      label: 'Choose no lines',
      group,
      keys: ['Escape'],
      heard: 'lines',
      also: 'deselect',
      can: () => selection.any() || selection.ticking(),
      run: () => selection.clear(),
    },
    {
      id: 'chosen.copy',
      label: 'Copy lines for another sheet',
      group,
      keys: ['Ctrl+C'],
      heard: 'lines',
      can,
      run: () => void copyLines(context, ids(), 'lines'),
    },
    { id: 'chosen.cut', label: 'Cut lines', group, keys: ['Ctrl+X'], heard: 'lines' },
    {
      id: 'chosen.table',
      label: 'Copy figures for a spreadsheet',
      group,
      also: 'table export column',
      can,
      run: () => void copyLines(context, ids(), 'table'),
    },
    {
      id: 'chosen.paste',
      label: 'Paste lines, readings or a table',
      group,
      keys: ['Ctrl+V'],
      heard: 'lines',
      also: 'spreadsheet column import',
      run: () => void pasteByButton(context, selection),
    },
  ];
};
