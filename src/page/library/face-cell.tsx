import { createMemo, For, Show } from 'solid-js';
import type { CellOutput } from '../../../cells/cell.ts';
import { HeldValue } from '../held/held-note.tsx';
import { useSheet } from '../sheet/context.ts';
import { GridCell } from '../sheet/grid-cell.tsx';
import { ProblemNote } from '../sheet/problem-note.tsx';
import { moveText } from '../state/move-text.ts';
import { standingFigure } from '../state/moves.ts';
import './face-cell.css';

export interface FaceCellProps {
  cell: string;
  outputs: readonly CellOutput[];
}

/** The two or three figures of a folded library cell, each in one row of its own line. */
export const FaceCell = (props: FaceCellProps) => {
  const { sheet } = useSheet();
  const line = () => sheet.line(props.cell);
  const told = () => props.outputs.filter(({ name }) => !line()?.result?.outputs[name]?.idle);
  /** What keeps a figure from being there, said once. */
  const problem = createMemo(() =>
    told()
      .map(({ name }) => line()?.result?.outputs[name]?.problem)
      .find((found) => found !== undefined),
  );
  return (
    <GridCell row={props.cell} column="value" class="face" span={2}>
      <dl class="face-figures">
        <For each={told()}>{(output) => <FaceFigure cell={props.cell} output={output} />}</For>
      </dl>
      <Show when={problem()}>{(p) => <ProblemNote problem={p()} cell={props.cell} brief />}</Show>
    </GridCell>
  );
};

const FaceFigure = (props: { cell: string; output: CellOutput }) => {
  const { sheet, show } = useSheet();
  const name = () => props.output.name;
  const result = () => sheet.line(props.cell)?.result?.outputs[name()];
  const at = () => show.output(props.cell, name());
  const move = () => sheet.line(props.cell)?.moved[name()];
  const changed = () => {
    const { from, to } = move() ?? {};
    const by = from !== undefined && to !== undefined ? to - from : undefined;
    const figure = standingFigure(result());
    return moveText(by, figure, (si) => at().step(si, figure));
  };
  return (
    <div>
      <dt title={props.output.label}>{props.output.label}</dt>
      <dd>
        <Show
          when={standingFigure(result())}
          fallback={result()?.logical === undefined ? '—' : String(result()!.logical)}
        >
          {(figure) => (
            <>
              <b>{at().value(figure())}</b>{' '}
              <small>{at().beside(figure(), result()?.stands === 'measured')}</small>
              <Show when={show.other(props.cell, name())}>
                {(other) => <small class="other-system">{other().value(figure())}</small>}
              </Show>
            </>
          )}
        </Show>
        <Show when={changed()}>{(by) => <span class="moved">{by()}</span>}</Show>
        <HeldValue cell={props.cell} output={name()} />
      </dd>
    </div>
  );
};
