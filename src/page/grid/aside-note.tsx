import { Show } from 'solid-js';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { say } from '../kit/words.ts';
import { useSheet } from '../state/context.ts';

/** Says of a line that it is of a way that is not taken. */
export const AsideNote = (props: { record: CellRecord }) => {
  const { sheet } = useSheet();
  return (
    <Show when={sheet.asideOf(props.record)}>
      {(taken) => <span class="aside block caption">set aside: {say(taken())} is taken</span>}
    </Show>
  );
};
