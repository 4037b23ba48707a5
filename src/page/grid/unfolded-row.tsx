import { Show, Suspense } from 'solid-js';
import { late } from '../kit/late.tsx';
import { useSheet } from '../state/context.ts';
import { cellOfRow, type RowKey } from '../state/row-key.ts';
import { GridRow, StillCell } from './grid-row.tsx';

const Unfolded = late('What this line unfolds', () => import('../unfolded/unfolded.tsx'));

/** What unfolds below the line under the cursor. */
export const UnfoldedRow = (props: { row: RowKey; open?: boolean }) => {
  const { cursor, sheet } = useSheet();
  return (
    <Show when={props.open ?? cursor.isOpen(props.row)}>
      <GridRow cell={cellOfRow(props.row)} class="unfolded">
        <StillCell span={6}>
          <Suspense fallback={<p class="caption">…</p>}>
            <section aria-label={`${sheet.titleOf(cellOfRow(props.row))}, unfolded`}>
              <Unfolded row={props.row} />
            </section>
          </Suspense>
        </StillCell>
      </GridRow>
    </Show>
  );
};
