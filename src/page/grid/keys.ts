import type { SheetContext } from '../state/context.ts';
import { bringIntoView } from '../state/in-place.ts';
import { askAndDelete, moveLines } from '../state/lines-commands.ts';
import { cellOfRow, lineRow } from '../state/row-key.ts';
import type { Selection } from '../state/selection.ts';

const onLine = (event: Event): boolean =>
  event.target instanceof HTMLElement && event.target.matches('[role="grid"] [data-column]');

/**
 * Keys and presses that choose lines, heard before the grid's own: Shift with an arrow, Shift+Space, Ctrl+A; with lines
 * chosen, Delete and Alt with an arrow are about all of them. @returns the way to let go.
 */
export const hearSelection = (context: SheetContext, selection: Selection): (() => void) => {
  const { sheet, cursor } = context;
  const step = (from: string, way: -1 | 1) => {
    const { order } = sheet.state;
    const to = order[order.indexOf(from) + way];
    if (to === undefined) {
      selection.extend(from, from);
      return;
    }
    cursor.setUnfolded(false);
    selection.extend(from, to);
    const row = lineRow(to);
    cursor.move({ row, column: cursor.place()?.column ?? 'name' });
    if (!document.activeElement?.matches(`[data-row="${CSS.escape(row)}"] [data-column]`))
      cursor.move({ row, column: 'name' });
    bringIntoView(row);
  };
  /** @returns true where the key was about choosing or about what is chosen. */
  const take = (event: KeyboardEvent, cell: string): boolean => {
    const arrow = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : undefined;
    const command = event.ctrlKey || event.metaKey;
    if (arrow && event.shiftKey && !command && !event.altKey) step(cell, arrow);
    else if (event.key === ' ' && event.shiftKey && !command) selection.toggle(cell);
    else if (event.key.toLowerCase() === 'a' && command && !event.shiftKey && !event.altKey) selection.all();
    else if (event.key === 'Escape' && (selection.any() || selection.ticking())) selection.clear();
    else if (!selection.any()) return false;
    else if (event.key === 'Delete' && !command) askAndDelete(context, selection, selection.ids());
    else if (arrow && event.altKey) moveLines(context, selection.ids(), arrow);
    else {
      if (arrow && !selection.ticking()) selection.clear();
      return false;
    }
    return true;
  };
  const keys = (event: KeyboardEvent) => {
    const place = cursor.place();
    if (!place || !onLine(event) || !take(event, cellOfRow(place.row))) return;
    event.preventDefault();
    event.stopPropagation();
  };
  const press = (event: MouseEvent) => {
    const cell = (event.target as Element).closest<HTMLElement>('[role="grid"] [data-cell]')?.dataset.cell;
    const place = cursor.place();
    if (!cell || (event.target as Element).closest('.tick, input, select, textarea, .editor')) return;
    if (event.shiftKey && place) {
      event.preventDefault();
      event.stopPropagation();
      cursor.setUnfolded(false);
      selection.extend(cellOfRow(place.row), cell);
      cursor.move({ row: lineRow(cell), column: 'name' });
      getSelection()?.removeAllRanges();
    } else if (selection.any() && !selection.ticking() && !(event.target as Element).closest('button'))
      selection.clear();
  };
  addEventListener('keydown', keys, true);
  addEventListener('click', press, true);
  return () => {
    removeEventListener('keydown', keys, true);
    removeEventListener('click', press, true);
  };
};
