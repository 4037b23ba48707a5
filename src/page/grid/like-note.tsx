import { Show } from 'solid-js';
import { useSheet } from '../state/context.ts';

/** Says of a name that another line's looks like it, as long as both stand. */
export const LikeNote = (props: { name: string }) => {
  const { sheet } = useSheet();
  const others = () => sheet.looksLike(props.name).map((id) => sheet.numberOf(id));
  return (
    <Show when={others().length > 0}>
      <span class="like block caption">
        looks like the name of line {others().join(', ')}, and is another: rename one
      </span>
    </Show>
  );
};
