import type { Column, Place } from '../state/cursor.ts';
import type { RowKey } from '../state/row-key.ts';

/** What a key does in the grid; the WAI-ARIA grid pattern, with Enter and F2 for editing and Alt with arrows for moving. */
export type GridAction =
  | { do: 'move'; to: Place }
  | { do: 'edit'; start?: string }
  | { do: 'fold' }
  | { do: 'unfold' }
  | { do: 'delete' }
  | { do: 'empty' }
  | { do: 'add' }
  | { do: 'carry'; way: -1 | 1 };

/** Rows of the grid as they stand, each with its columns. */
export interface GridRow {
  row: RowKey;
  columns: readonly Column[];
}

const PAGE = 10;

const clamp = (n: number, last: number) => Math.max(0, Math.min(n, last));

/** The column to land on in another row: the same, else the nearest before it that the row has. */
const landing = (row: GridRow, column: Column): Column => {
  if (row.columns.includes(column)) return column;
  const order: readonly Column[] = ['number', 'name', 'entry', 'value', 'limits', 'check'];
  const at = order.indexOf(column);
  return order.slice(0, at).findLast((c) => row.columns.includes(c)) ?? row.columns[0] ?? 'name';
};

type Key = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>;

/** @returns nothing for a key the grid leaves to the page. */
export const gridAction = (rows: readonly GridRow[], place: Place, event: Key): GridAction | undefined => {
  const at = rows.findIndex((r) => r.row === place.row);
  const here = rows[at];
  if (!here) return undefined;
  const last = rows.length - 1;
  const command = event.ctrlKey || event.metaKey;
  const columnAt = here.columns.indexOf(place.column);
  const down = (to: number): GridAction => {
    const row = rows[clamp(to, last)]!;
    return { do: 'move', to: { row: row.row, column: landing(row, place.column) } };
  };
  const along = (to: number): GridAction => ({
    do: 'move',
    to: { row: place.row, column: here.columns[clamp(to, here.columns.length - 1)]! },
  });
  const corner = (row: GridRow, column: Column | undefined): GridAction => ({
    do: 'move',
    to: { row: row.row, column: column ?? 'name' },
  });
  if (event.altKey) {
    if (event.key === 'ArrowUp') return { do: 'carry', way: -1 };
    if (event.key === 'ArrowDown') return { do: 'carry', way: 1 };
    if (event.key === 'Enter') return { do: 'add' };
    return undefined;
  }
  switch (event.key) {
    case 'ArrowUp':
      return command ? down(0) : down(at - 1);
    case 'ArrowDown':
      return command ? down(last) : down(at + 1);
    case 'ArrowLeft':
      return command ? along(0) : along(columnAt - 1);
    case 'ArrowRight':
      return command ? along(here.columns.length - 1) : along(columnAt + 1);
    case 'PageUp':
      return down(at - PAGE);
    case 'PageDown':
      return down(at + PAGE);
    case 'Home':
      return command ? corner(rows[0]!, rows[0]!.columns[0]) : along(0);
    case 'End':
      return command ? corner(rows[last]!, rows[last]!.columns.at(-1)) : along(here.columns.length - 1);
    case 'Enter':
    case 'F2':
      if (command) return undefined;
      return place.column === 'entry' ? { do: 'edit' } : { do: 'unfold' };
    case 'Escape':
      return { do: 'fold' };
    case 'Delete':
    case 'Backspace':
      if (command) return undefined;
      // What stands under the cursor goes, and nothing besides: the line only from where it is named.
      if (place.column === 'entry') return { do: 'empty' };
      return event.key === 'Delete' && (place.column === 'number' || place.column === 'name')
        ? { do: 'delete' }
        : undefined;
    case 'Insert':
      return { do: 'add' };
    default:
      // A figure, a sign or a letter begins a new entry in place of the present one.
      if (place.column === 'entry' && event.key.length === 1 && event.key !== ' ' && !command)
        return { do: 'edit', start: event.key };
      return undefined;
  }
};
