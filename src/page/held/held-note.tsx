import { Show } from 'solid-js';
import { useTools } from '../commands/tools.ts';
import { useSheet } from '../sheet/context.ts';
import { standingFigure } from '../state/moves.ts';
import './held.css';

interface HeldNoteProps {
  cell: string;
  output: string;
}

/** Held figure and how far the present one is from it, where it is another. */
export const HeldValue = (props: HeldNoteProps) => {
  const { sheet, show } = useSheet();
  const { held } = useTools();
  const at = () => show.output(props.cell, props.output);
  const like = () => standingFigure(sheet.line(props.cell)?.result?.outputs[props.output]);
  /** A difference too small to be shown is none. */
  const step = (by: number) => {
    const text = at().step(by, like());
    return /[1-9]/.test(text) ? text : undefined;
  };
  return (
    <Show when={held.changeOf(props.cell, props.output)}>
      {(change) => (
        <span class="held-note">
          <Show when={change().from !== undefined} fallback={change().to === undefined ? '' : 'none held'}>
            held {at().amount(change().from!, like())}
            <Show when={change().to !== undefined && step(change().to! - change().from!)}>
              {(by) => <>, since {by()}</>}
            </Show>
            <Show when={change().to === undefined}>, no figure now</Show>
          </Show>
        </span>
      )}
    </Show>
  );
};

/** Held verdict, where it is another. */
export const HeldCheck = (props: HeldNoteProps) => {
  const { held } = useTools();
  return (
    <Show when={held.changeOf(props.cell, props.output)?.check}>
      {(check) => <span class="held-note">held: {check()}</span>}
    </Show>
  );
};
