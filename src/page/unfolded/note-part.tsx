import { createEffect, createSignal, Show } from 'solid-js';
import { TextField } from '../kit/text-field.tsx';
import { isResumed } from '../kit/typed-aside.ts';
import { say } from '../kit/words.ts';
import { useSheet } from '../state/context.ts';

/** The note of a line as text to be read; a field for it on request. */
export const NotePart = (props: { cell: string }) => {
  const { sheet } = useSheet();
  const [edited, setEdited] = createSignal(false);
  createEffect(() => isResumed((field, cell) => cell === props.cell && field === 'note') && setEdited(true));
  const note = () => sheet.line(props.cell)?.record.note;
  return (
    <div class="note-part along gap-x-3 gap-y-1 [&>p]:flex-[0_1_46rem] [&>.field]:(flex-[1_1_16rem] max-w-46rem)">
      <Show
        when={edited()}
        fallback={
          <>
            <Show when={note()}>{(text) => <p>{say(text())}</p>}</Show>
            <button type="button" class="plain" onClick={() => setEdited(true)}>
              {note() ? 'Edit the note' : 'Add a note'}
            </button>
          </>
        }
      >
        <TextField
          label="Note"
          value={note()}
          aside={{ sheet: sheet.document.id, cell: props.cell, field: 'note' }}
          lines={2}
          ref={(element) => queueMicrotask(() => element.focus())}
          onCommit={(text) => {
            const refusal = sheet.document.setField(props.cell, 'note', text || undefined)?.message;
            if (!refusal) setEdited(false);
            return refusal;
          }}
          hint="Ctrl+Enter takes it"
        />
      </Show>
    </div>
  );
};
