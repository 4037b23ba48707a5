import { Show } from 'solid-js';
import { useSheet } from '../state/context.ts';
import { standingFigure } from '../state/moves.ts';
import { useTools } from '../state/tools.ts';

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
    return /[1-9]/.test(text) ? text : '';
  };
  const text = () => {
    const { from, to } = held.changeOf(props.cell, props.output) ?? {};
    if (from === undefined) return to === undefined ? '' : 'none held';
    const was = `was ${at().amount(from, like())}`;
    if (to === undefined) return `${was}, no figure now`;
    const by = step(to - from);
    return by && `${was}, now ${by}`;
  };
  return <Show when={text()}>{(said) => <span class="held-note">{said()}</span>}</Show>;
};

/** Held verdict, where it is another. */
export const HeldCheck = (props: HeldNoteProps) => {
  const { held } = useTools();
  return (
    <Show when={held.changeOf(props.cell, props.output)?.check}>
      {(check) => <span class="held-note">was: {check()}</span>}
    </Show>
  );
};
