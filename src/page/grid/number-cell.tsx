import { Show } from 'solid-js';
import { useSheet } from '../state/context.ts';
import { focusCell } from '../state/in-place.ts';
import type { RowKey } from '../state/row-key.ts';
import { useTools } from '../state/tools.ts';
import { carry } from './carry.ts';
import { GridCell } from './grid-cell.tsx';
import { Tick } from './tick.tsx';

export interface NumberCellProps {
  row: RowKey;
  cell: string;
}

/** The line's number, the handle to move it by, and the mark that says it feeds or is fed by the line under the cursor. */
export const NumberCell = (props: NumberCellProps) => {
  const context = useSheet();
  const { sheet, chain, cursor } = context;
  const { selection } = useTools();
  const title = () => sheet.titleOf(props.cell);
  return (
    <GridCell row={props.row} column="number">
      <span>{sheet.numberOf(props.cell) ?? ''}</span>
      <Tick cell={props.cell} />
      <Show when={chain.sideOf(props.cell)}>
        {(side) => (
          <span
            class="order-1 basis-full text-center whitespace-nowrap text-small font-normal text-pencil"
            title={side() === 'up' ? 'feeds the line under the cursor' : 'follows the line under the cursor'}
          >
            {side() === 'up' ? 'feeds' : 'follows'}
          </span>
        )}
      </Show>
      <button
        type="button"
        class="handle inline-flex justify-center items-center w-24px min-h-20px p-0 lined-none bg-transparent text-soft cursor-grab [touch-action:none] opacity-0 focus-visible:opacity-100 [.line:is(:hover,.here)_&]:opacity-100 phone:(w-44px min-h-44px) [.line:not(.here)_&]:phone:hidden"
        tabindex={-1}
        aria-label={`Move ${title()}: drag, or Alt with the arrow keys`}
        onPointerDown={(event) =>
          carry(event, selection.has(props.cell) ? selection.ids() : [props.cell], context)
        }
        // Let go of where it was taken, it is pressed as its cell is: the next key is meant for this line.
        onClick={() => {
          cursor.move({ row: props.row, column: 'number' });
          focusCell(props.row, 'number');
        }}
      >
        <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
          <path d="M3 5h10M3 8h10M3 11h10" stroke="currentColor" stroke-width="1.5" />
        </svg>
      </button>
    </GridCell>
  );
};
