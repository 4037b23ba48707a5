import { createMemo, Show } from 'solid-js';
import { type EntriesAsked, entriesAsked, nextAsked, waitedFor } from '../state/asked.ts';
import { type SheetContext, useSheet } from '../state/context.ts';
import { editEntry } from '../state/edit-entry.ts';
import { bringUp, rowElement } from '../state/in-place.ts';
import { useLibrary } from '../state/library.ts';
import { cellOfRow, isLineRow, type RowKey } from '../state/row-key.ts';

/** Entries that are still to be made. */
export const askedOf = ({ sheet }: SheetContext): EntriesAsked => {
  const lines = sheet.lines();
  return entriesAsked(
    lines.map(({ record }) => record),
    useLibrary()(),
    waitedFor(lines.flatMap(({ result }) => result ?? [])),
  );
};

/** Goes to the next entry to make and opens it for typing; past the last, to the first. */
export const toNextEntry = (context: SheetContext): void => {
  const { sheet, cursor, goTo } = context;
  const { must, may } = askedOf(context);
  const from = cursor.place()?.row;
  // What is being typed there may not be in yet: it is left behind as if it were.
  const others = (rows: readonly RowKey[]) => rows.filter((row) => row !== from);
  const left = [others(must), others(may), must, may].find((rows) => rows.length > 0) ?? [];
  const row = nextAsked(left, sheet.state.order, from);
  if (!row) return;
  goTo(cellOfRow(row));
  // A plain line says under its label what is wanted: unfolded, all that can be set about it would be in the way.
  if (isLineRow(row)) cursor.setUnfolded(false);
  // One that is chosen from a list is opened by its own key.
  if (rowElement(row)?.querySelector('[data-column="entry"] select')) cursor.move({ row, column: 'entry' });
  else editEntry(context, row);
  bringUp(row);
};

/** At hand while somebody works down a sheet: the way to the next entry. */
export const NextEntry = () => {
  const context = useSheet();
  const left = createMemo(() => askedOf(context).must.length);
  return (
    <Show when={left() > 0}>
      <div class="next-entry sticky bottom-0 z-3 flex items-center justify-end gap-3 px-3 py-1 bg-paper lined-t phone:bottom-[var(--notice,0)]">
        <span class="caption">
          {left()} to make<span class="touch:hidden">; F8 goes on</span>
        </span>
        <button type="button" class="main" title="F8" onClick={() => toNextEntry(context)}>
          Next entry
        </button>
      </div>
    </Show>
  );
};
