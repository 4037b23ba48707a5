import { Show } from 'solid-js';
import { useSheet } from '../state/context.ts';
import { useTools } from '../state/tools.ts';

/** The box to tick a line by, while lines are being chosen. */
export const Tick = (props: { cell: string }) => {
  const { sheet } = useSheet();
  const { selection } = useTools();
  return (
    <Show when={selection.ticking()}>
      <label class="tick">
        <input
          type="checkbox"
          checked={selection.has(props.cell)}
          onChange={() => selection.toggle(props.cell)}
          aria-label={`Choose ${sheet.titleOf(props.cell)}`}
        />
      </label>
    </Show>
  );
};
