import type { JSX } from 'solid-js';
import { useSheet } from '../state/context.ts';
import type { RowKey } from '../state/row-key.ts';
import { useTools } from '../state/tools.ts';

export interface GridRowProps {
  /** Absent for a row the cursor does not stop at. */
  row?: RowKey;
  cell?: string;
  class?: string;
  children: JSX.Element;
}

/** A row of the grid. Its cells take the focus, never the row itself. */
export const GridRow = (props: GridRowProps) => {
  const { cursor } = useSheet();
  const { selection } = useTools();
  const here = () => props.row !== undefined && cursor.isRow(props.row);
  const chosen = () => props.cell !== undefined && selection.has(props.cell);
  return (
    // biome-ignore lint/a11y/useFocusableInteractive: the grid pattern has its cells take the focus
    // biome-ignore lint/a11y/useSemanticElements: a table has no rows that unfold or stack on a phone
    <div
      // One text: a class of its own that changes would wipe out what a list of classes had put on.
      class={`line ${props.class ?? ''}${here() ? ' here' : ''}${chosen() ? ' chosen' : ''}`}
      aria-selected={chosen() ? 'true' : undefined}
      role="row"
      data-row={props.row}
      data-cell={props.cell}
    >
      {props.children}
    </div>
  );
};

export interface WholeCellProps {
  class?: string;
  children?: JSX.Element;
}

/** A cell the cursor does not stop at: blank, or across the whole sheet with fields of its own. */
export const StillCell = (props: WholeCellProps & { span?: number }) => (
  // biome-ignore lint/a11y/useFocusableInteractive: what stands in it takes the focus
  // biome-ignore lint/a11y/useSemanticElements: a table has no rows that unfold or stack on a phone
  <div class={`cell ${props.class ?? ''}`} role="gridcell" aria-colspan={props.span} aria-readonly="true">
    {props.children}
  </div>
);
