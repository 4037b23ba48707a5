import { createEffect, type JSX, untrack } from 'solid-js';
import { isPointerDown } from '../kit/pointer.ts';
import { useSheet } from '../state/context.ts';
import type { Column } from '../state/cursor.ts';
import { editEntry } from '../state/edit-entry.ts';
import { keepInPlace, revealBelow } from '../state/in-place.ts';
import type { RowKey } from '../state/row-key.ts';

export interface GridCellProps {
  row: RowKey;
  column: Column;
  class?: string;
  /** A click here begins to type. */
  editable?: boolean;
  /** Its row has something to unfold, and this cell says whether it has. */
  unfolds?: boolean;
  span?: number;
  /** Read out behind what stands in the cell. */
  description?: string;
  children: JSX.Element;
}

/** One cell of the grid: takes the focus when the cursor is on it, and only then is it a stop for Tab. */
export const GridCell = (props: GridCellProps) => {
  const context = useSheet();
  const { cursor } = context;
  const here = () => cursor.isAt(props.row, props.column);
  const isTyped = () =>
    props.column === 'entry' && (cursor.isEdited(props.row) || cursor.isEditedAsCut(props.row));
  let element!: HTMLDivElement;
  // Only where the cursor has come here. That an edit ends is no reason: whoever pressed elsewhere is typing there.
  createEffect<boolean>((before) => {
    const now = here();
    const edited = untrack(() => cursor.isEdited(props.row) || cursor.isEditedAsCut(props.row));
    // Not when something inside has the focus already: a click on a button in the cell must reach it.
    if (now && !before && !edited && !element.contains(document.activeElement))
      element.focus({ preventScroll: true });
    return now;
  }, here());
  const click = (event: MouseEvent) => {
    if ((event.target as Element).closest('button, input, select, textarea, a, .editor')) return;
    keepInPlace(props.row, () => {
      cursor.setUnfolded(true);
      if (props.editable) editEntry(context, props.row);
      else cursor.move({ row: props.row, column: props.column });
    });
    revealBelow(props.row);
  };
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the grid handles the keys of all its cells
    // biome-ignore lint/a11y/useFocusableInteractive: it takes the focus by the roving tabindex below
    // biome-ignore lint/a11y/useSemanticElements: a table has no rows that unfold or stack on a phone
    <div
      ref={element}
      role="gridcell"
      class={`cell ${props.column} ${props.class ?? ''}`}
      data-column={props.column}
      aria-colspan={props.span}
      aria-description={props.description}
      aria-expanded={props.unfolds ? cursor.isOpen(props.row) : undefined}
      aria-readonly={props.editable ? undefined : 'true'}
      // No stop while typed in: Shift+Tab would stay here, and the next key begin the entry anew.
      tabindex={here() && !isTyped() ? 0 : -1}
      onFocusIn={() => {
        // While the pointer is down nothing may fold or unfold under it; the click does.
        if (!isPointerDown()) cursor.move({ row: props.row, column: props.column });
      }}
      onClick={click}
    >
      {props.children}
    </div>
  );
};
