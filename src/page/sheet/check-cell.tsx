import { Show } from 'solid-js';
import { ownRule } from '../../../shared/decision-rules.ts';
import type { OutputResult } from '../../engine/results.ts';
import { HeldCheck } from '../held/held-note.tsx';
import { CheckMark } from '../marks/check-mark.tsx';
import { leading, serviceWords } from '../marks/check-words.ts';
import type { RowKey } from '../state/cursor.ts';
import { type Move, standingFigure } from '../state/moves.ts';
import { useSheet } from './context.ts';
import { GridCell } from './grid-cell.tsx';
import { ProblemNote } from './problem-note.tsx';

export interface CheckCellProps {
  row: RowKey;
  cell: string;
  output: string;
  result: OutputResult | undefined;
  move: Move | undefined;
}

const AT = { lower: 'lower limit', upper: 'upper limit', wear: 'wear limit' } as const;

/** The verdict: its word, its sign, and on which side and by how much it misses or keeps the limit. */
export const CheckCell = (props: CheckCellProps) => {
  const { show, sheet } = useSheet();
  const verdict = () => props.result && leading(props.result.check);
  /** Which limit, by how much, on which side; and service, where there is another word for it. */
  const more = () => {
    const v = verdict();
    if (!v) return undefined;
    const parts: string[] = [];
    if (v.by !== undefined && v.at) {
      const by = show
        .output(props.cell, props.output)
        .change(Math.abs(v.by), standingFigure(props.result), false);
      if (!/[1-9]/.test(by)) parts.push(`on the ${AT[v.at]}`);
      else parts.push(v.by > 0 ? `${by} beyond the ${AT[v.at]}` : `${by} to the ${AT[v.at]}`);
    }
    if (v.side) parts.push(v.side);
    const { check } = props.result!;
    return [parts.join(', '), serviceWords(check), ownRule(check.rule, sheet.state.rule)]
      .filter(Boolean)
      .join('; ');
  };
  /** Its own blank entry asks for itself. */
  const isOwnBlank = () =>
    props.result?.problem?.kind === 'blank' && props.result.problem.originId === props.cell;
  // A line with neither limits nor anything amiss has no verdict worth a word.
  const told = () => {
    const state = verdict()?.state;
    return state !== undefined && state !== 'no limits';
  };
  return (
    <GridCell row={props.row} column="check">
      <Show when={told()}>
        <CheckMark state={verdict()!.state} more={more()} before={props.move?.check} />
      </Show>
      <HeldCheck cell={props.cell} output={props.output} />
      <Show when={!isOwnBlank() && props.result?.problem}>
        {(problem) => <ProblemNote problem={problem()} cell={props.cell} brief />}
      </Show>
    </GridCell>
  );
};
