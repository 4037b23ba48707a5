import { createEffect, Show } from 'solid-js';
import { usesComma } from '../kit/decimal-mark.ts';
import { useSheet } from '../state/context.ts';
import { didHint, dueHint, noMoreHints } from '../state/hints.ts';
import { useTools } from '../state/tools.ts';

/** One hint at a time for the first minutes; it goes by itself once it has been followed. */
export const HintBar = () => {
  const { cursor } = useSheet();
  const { overlay } = useTools();
  createEffect(() => cursor.unfolded() && didHint('unfold'));
  createEffect(() => overlay() === 'finder' && didHint('find'));
  return (
    <Show when={dueHint()} keyed>
      {(hint) => (
        <aside class="hint-bar strip gap-x-2 gap-y-0 bg-tint lined-b-rule" aria-label="Hint">
          <p class="flex-[1_1_20rem] py-1">
            {usesComma() ? hint.text.replace('2.2515', '2,2515') : hint.text}
          </p>
          <button type="button" class="plain" onClick={() => didHint(hint.id)}>
            Next hint
          </button>
          <button type="button" class="plain" onClick={noMoreHints}>
            No more hints
          </button>
        </aside>
      )}
    </Show>
  );
};
