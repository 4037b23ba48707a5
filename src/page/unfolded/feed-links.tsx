import { createMemo, For, Show } from 'solid-js';
import { Part } from '../kit/part.tsx';
import { useSheet } from '../state/context.ts';
import { standingFigure } from '../state/moves.ts';

/** What the line depends on and what depends on it, one step each way; a press goes there. */
export const FeedLinks = (props: { cell: string }) => {
  const { sheet } = useSheet();
  const feeds = createMemo(() => (sheet.line(props.cell)?.shape?.feeds ?? []).filter((id) => sheet.line(id)));
  const users = createMemo(() => sheet.usersOf(props.cell));
  return (
    <Show when={feeds().length + users().length > 0}>
      <div class="grid gap-2">
        <Show when={feeds().length > 0}>
          <Part title="Hangs on">
            <Links cells={feeds()} />
          </Part>
        </Show>
        <Show when={users().length > 0}>
          <Part title="Feeds">
            <Links cells={users()} />
          </Part>
        </Show>
      </div>
    </Show>
  );
};

const Links = (props: { cells: readonly string[] }) => {
  const { sheet, show, goTo } = useSheet();
  const figure = (id: string) => standingFigure(sheet.line(id)?.result?.outputs.value);
  return (
    <ul>
      <For each={props.cells}>
        {(id) => (
          <li>
            <button type="button" class="go" onClick={() => goTo(id)}>
              {sheet.numberOf(id)} {sheet.titleOf(id)}
            </button>
            <Show when={figure(id)}>
              {(f) => <span class="caption"> {show.output(id, 'value').value(f())}</span>}
            </Show>
          </li>
        )}
      </For>
    </ul>
  );
};
