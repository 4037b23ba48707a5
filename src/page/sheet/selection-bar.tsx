import { Show } from 'solid-js';
import { copyLines } from '../grid/listen.ts';
import { useSheet } from '../state/context.ts';
import { deleteLines, duplicateLines, moveLines } from '../state/lines-commands.ts';
import { useTools } from '../state/tools.ts';
import './selection.css';

/** What can be done with the chosen lines, at the foot of the window while there are any. */
export const SelectionBar = () => {
  const context = useSheet();
  const { selection } = useTools();
  const ids = () => selection.ids();
  return (
    <Show when={selection.any() || selection.ticking()}>
      <div class="selection-bar" role="toolbar" aria-label="Chosen lines">
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
          onClick={() => deleteLines(context, selection, ids())}
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
