import { createSelector, createSignal } from 'solid-js';

import { cellOfRow, type RowKey } from './row-key.ts';

export type Column = 'number' | 'name' | 'entry' | 'value' | 'limits' | 'check';

export interface Place {
  row: RowKey;
  column: Column;
}

/** Where the keyboard is in the grid, which line is unfolded, and which entry is being typed. */
export const createCursor = (first?: Place) => {
  const [place, setPlace] = createSignal(first);
  const [unfolded, setUnfolded] = createSignal(false);
  const [editing, setEditing] = createSignal<{ row: RowKey; start?: string; asCut?: true }>();
  const isPlace = createSelector<string | undefined, string>(
    () => place() && `${place()!.row} ${place()!.column}`,
  );
  const isRow = createSelector<string | undefined, string>(() => place()?.row);
  const isOpen = createSelector<string | undefined, string>(() => (unfolded() ? place()?.row : undefined));
  const isOpenCell = createSelector<string | undefined, string>(() =>
    unfolded() && place() ? cellOfRow(place()!.row) : undefined,
  );
  const isEdited = createSelector<string | undefined, string>(() =>
    editing()?.asCut ? undefined : editing()?.row,
  );
  const isEditedAsCut = createSelector<string | undefined, string>(() =>
    editing()?.asCut ? editing()?.row : undefined,
  );
  return {
    place,
    unfolded,
    setUnfolded,
    isAt: (row: RowKey, column: Column) => isPlace(`${row} ${column}`),
    isRow,
    isOpen,
    /** Any row of the cell is under the cursor, unfolded. */
    isOpenCell,
    isEdited,
    /** What the part came out at is being typed in this row, not what was planned. */
    isEditedAsCut,
    editing,
    /** Text an edit begins with in place of the present entry: the key that started it. */
    start: () => editing()?.start,
    move: (to: Place) => {
      const before = place();
      if (before?.row === to.row && before.column === to.column) return;
      setPlace(to);
    },
    edit: (row: RowKey, start?: string) => {
      setPlace({ row, column: 'entry' });
      setEditing(start === undefined ? { row } : { row, start });
    },
    editAsCut: (row: RowKey, start?: string) => {
      setPlace({ row, column: 'entry' });
      setEditing(start === undefined ? { row, asCut: true } : { row, asCut: true, start });
    },
    /** Ends the edit of a row, unless another row is being edited by now. */
    leave: (row: RowKey) => setEditing((now) => (now?.row === row ? undefined : now)),
  };
};

export type Cursor = ReturnType<typeof createCursor>;
