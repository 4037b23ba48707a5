import { createMemo, Show } from 'solid-js';
import type { ShownFigure } from '../../../shared/figures.ts';
import type { Figure, OutputResult } from '../../engine/results.ts';
import { HeldValue } from '../held/held-note.tsx';
import '../marks/amount.css';
import type { RowKey } from '../state/cursor.ts';
import { moveText } from '../state/move-text.ts';
import { type Move, standingFigure } from '../state/moves.ts';
import { useSheet } from './context.ts';
import { GridCell } from './grid-cell.tsx';

export interface ValueCellProps {
  row: RowKey;
  cell: string;
  output: string;
  result: OutputResult | undefined;
  move: Move | undefined;
}

/** The figure with its spread; plan and part one above the other where there are both; below, what the last edit did. */
export const ValueCell = (props: ValueCellProps) => {
  const { show, sheet } = useSheet();
  /** The line itself is a reading, so that its spread is an expanded uncertainty. */
  const read = () => sheet.line(props.cell)?.record.role === 'measured';
  const standing = () => standingFigure(props.result);
  const at = createMemo(() => show.output(props.cell, props.output));
  /** What the last edit did, in words. */
  const moved = createMemo(() => {
    const { from, to } = props.move ?? {};
    if (to === undefined) return undefined;
    if (from === undefined) return 'new';
    // From the plan to the part: the line above says it.
    if (props.result?.measured && from === props.result.planned?.value) return undefined;
    const like = standing();
    const by = moveText(to - from, like, (si) => at().change(si, like));
    return by && `${by} (was ${at().amount(from, like)})`;
  });
  const Plan = (own: { figure: Figure }) => {
    const told = createMemo(() => at().told(own.figure, read()));
    return (
      <>
        <b>{told().value}</b>
        <small>{told().beside + (props.result?.stands === 'issued' ? ' issued' : '')}</small>
        <Other figure={own.figure} read={read()} />
      </>
    );
  };
  const Other = (own: { figure: ShownFigure; read: boolean }) => (
    <Show when={show.other(props.cell, props.output)}>
      {(other) => (
        <small class="other-system">
          {other().value(own.figure)} {other().beside(own.figure, own.read)}
        </small>
      )}
    </Show>
  );
  return (
    <GridCell row={props.row} column="value">
      <Show when={props.result?.measured}>
        {(figure) => (
          <span class="amount actual">
            <b>{at().value(figure())}</b>
            <small>{at().beside(figure(), true)}</small>
            <Other figure={figure()} read={true} />
          </span>
        )}
      </Show>
      <Show when={props.result?.planned}>
        {(figure) => (
          <span class="amount">
            <Show when={props.result?.measured} fallback={<Plan figure={figure()} />}>
              <small class="plan" title="planned size, and by how much it came out from it">
                planned {at().number(figure().value, figure())} {at().beside(figure(), read())}
                <Show when={props.result?.difference}>
                  {(difference) => <>, {at().step(difference().value, difference())}</>}
                </Show>
              </small>
            </Show>
            <Show
              when={!props.result?.measured && figure().aim !== undefined && figure().aim !== figure().value}
            >
              <small>aim {at().number(figure().aim!, figure())}</small>
            </Show>
          </span>
        )}
      </Show>
      <Show when={props.result?.replanned}>
        {(figure) => <small class="caption">would now be {at().value(figure())}</small>}
      </Show>
      <Show when={props.result?.logical !== undefined}>
        <b>{props.result?.logical ? 'true' : 'false'}</b>
      </Show>
      <Show when={moved()}>
        <span class="moved">{moved()}</span>
      </Show>
      <HeldValue cell={props.cell} output={props.output} />
    </GridCell>
  );
};
