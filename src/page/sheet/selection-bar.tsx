import { Show } from 'solid-js';
import { copyLines } from '../grid/listen.ts';
import { useSheet } from '../state/context.ts';
import { askAndDelete, duplicateLines, moveLines } from '../state/lines-commands.ts';
import { useTools } from '../state/tools.ts';

/** What can be done with the chosen lines, at the foot of the window while there are any. */
export const SelectionBar = () => {
  const context = useSheet();
  const { selection } = useTools();
  const ids = () => selection.ids();
  return (
    <Show when={selection.any() || selection.ticking()}>
      {/* Lines are chosen on the sheet: beside its chain or at the machine the bar would lie on what is there. */}
      <div
        class="selection-bar fixed inset-x-0 bottom-0 z-4 along justify-center px-3 py-2 bg-paper lined-t-wide phone:bottom-[var(--notice,0)] [main:not(.sheet)~&]:hidden"
        role="toolbar"
        aria-label="Chosen lines"
      >
        <strong role="status">
          {ids().length === 0 ? 'Tick the lines' : ids().length === 1 ? '1 line' : `${ids().length} lines`}
        </strong>
        <button
          type="button"
          disabled={!selection.any()}
          onClick={() => void copyLines(context, ids(), 'lines')}
        >
          Copy
        </button>
        <button
          type="button"
          disabled={!selection.any()}
          onClick={() => void copyLines(context, ids(), 'table')}
        >
          Copy for a spreadsheet
        </button>
        <button
          type="button"
          disabled={!selection.any()}
          onClick={() => duplicateLines(context, selection, ids())}
        >
          Copy below
        </button>
        <button type="button" disabled={!selection.any()} onClick={() => moveLines(context, ids(), -1)}>
          Up
        </button>
        <button type="button" disabled={!selection.any()} onClick={() => moveLines(context, ids(), 1)}>
          Down
        </button>
        <button
          type="button"
          disabled={!selection.any()}
          onClick={() => askAndDelete(context, selection, ids())}
        >
          Delete
        </button>
        <button type="button" class="main" onClick={() => selection.clear()}>
          Done
        </button>
      </div>
    </Show>
  );
};
