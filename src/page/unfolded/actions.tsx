import { createSignal, Show } from 'solid-js';
import AddLine from '../entry/add-line.tsx';
import { useSheet } from '../state/context.ts';
import { askAndDelete, duplicateLines, moveLines } from '../state/lines-commands.ts';
import { useTools } from '../state/tools.ts';

/** What can be done with the whole line. */
export const Actions = (props: { cell: string }) => {
  const context = useSheet();
  const { sheet, cursor } = context;
  const { selection } = useTools();
  const [adding, setAdding] = createSignal(false);
  const record = () => sheet.line(props.cell)!.record;
  return (
    <>
      <div class="buttons">
        <button type="button" aria-expanded={adding()} onClick={() => setAdding(!adding())}>
          Add a line below
        </button>
        <button type="button" onClick={() => duplicateLines(context, selection, [props.cell])}>
          Copy it below
        </button>
        <button type="button" onClick={() => moveLines(context, [props.cell], -1)}>
          Move up
        </button>
        <button type="button" onClick={() => moveLines(context, [props.cell], 1)}>
          Move down
        </button>
        <button
          type="button"
          aria-pressed={record().locked === true}
          onClick={() => sheet.document.setField(props.cell, 'locked', record().locked ? undefined : true)}
        >
          {record().locked ? 'Locked' : 'Lock'}
        </button>
        <button type="button" onClick={() => askAndDelete(context, selection, [props.cell])}>
          Delete
        </button>
        <button type="button" class="plain" onClick={() => cursor.setUnfolded(false)}>
          Fold
        </button>
      </div>
      <Show when={adding()}>
        <AddLine after={props.cell} onDone={() => setAdding(false)} />
      </Show>
    </>
  );
};
