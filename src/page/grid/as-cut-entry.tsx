import { Show } from 'solid-js';
import { commitTyped } from '../entry/commit-typed.ts';
import { EntryEditor } from '../entry/entry-editor.tsx';
import type { EntrySpot } from '../entry/spot.ts';
import { inUsualUnits, writtenOut } from '../kit/decimal-mark.ts';
import { useSheet } from '../state/context.ts';
import { lineRow } from '../state/row-key.ts';
import { backToCell } from './back-to-cell.ts';

export interface AsCutEntryProps {
  cell: string;
  text: string | undefined;
  quantity: string | undefined;
}

const BLANK = 'as measured, once cut';

/** What the part came out at, in the line of its plan: a box to fill once it is cut, as on paper. */
export const AsCutEntry = (props: AsCutEntryProps) => {
  const { cursor, sheet } = useSheet();
  const text = () => inUsualUnits(writtenOut(props.text ?? ''), sheet.state.units.tenth);
  const label = () => `As measured: ${sheet.titleOf(props.cell)}`;
  const spot = (): EntrySpot => ({
    cell: props.cell,
    field: 'measured.entry',
    kind: 'entry',
    quantity: props.quantity,
  });
  return (
    <div class="as-cut mt-1">
      <Show when={text() || cursor.isEditedAsCut(lineRow(props.cell))}>
        <span class="caption" aria-hidden="true">
          as measured
        </span>
      </Show>
      <Show
        when={cursor.isEditedAsCut(lineRow(props.cell))}
        fallback={
          <button
            type="button"
            class="block w-full min-h-28px px-6px lined-rule text-left wrap-anywhere cursor-text touch:min-h-target [.line:is(:hover,.here)_&]:border-ink"
            tabindex={-1}
            aria-label={text() ? `${label()}, ${text()}` : `${sheet.titleOf(props.cell)}: ${BLANK}`}
            onClick={() => cursor.editAsCut(lineRow(props.cell))}
          >
            <Show
              when={text()}
              fallback={<span class="blank text-soft [font-style:oblique] touch:text-small">{BLANK}</span>}
            >
              {text()}
            </Show>
          </button>
        }
      >
        <EntryEditor
          spot={spot()}
          text={cursor.start() ?? text()}
          stands={text()}
          label={label()}
          onCommit={(typed) => {
            const back = typed.byKey ? backToCell() : undefined;
            const leave = () => {
              back?.();
              cursor.leave(lineRow(props.cell));
            };
            commitTyped(sheet, spot(), { ...typed, leave });
          }}
          onLeave={() => {
            backToCell()();
            cursor.leave(lineRow(props.cell));
          }}
        />
      </Show>
    </div>
  );
};
