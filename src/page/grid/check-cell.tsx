import { Show } from 'solid-js';
import { ownRule } from '../../../shared/checks/decision-rules.ts';
import { drawsWords } from '../../../shared/checks/words.ts';
import { ProblemNote } from '../entry/problem-note.tsx';
import { CheckMark } from '../kit/check-mark.tsx';
import { leading, serviceWords } from '../kit/check-words.ts';
import { useSheet } from '../state/context.ts';
import { standingFigure } from '../state/moves.ts';
import type { RowKey } from '../state/row-key.ts';
import { GridCell } from './grid-cell.tsx';
import { HeldCheck } from './held-note.tsx';

export interface CheckCellProps {
  row: RowKey;
  cell: string;
  output: string;
}

const AT = { lower: 'lower limit', upper: 'upper limit', wear: 'wear limit' } as const;

/** The verdict: its word, its sign, and on which side and by how much it misses or keeps the limit. */
export const CheckCell = (props: CheckCellProps) => {
  const { show, sheet } = useSheet();
  const shape = () => sheet.shape(props.cell, props.output);
  /** Its word; by how much asks for the figures too, which few lines show. */
  const state = () => {
    const { check } = shape() ?? {};
    return check && leading(check).state;
  };
  /** Which limit, by how much, on which side; and service, where there is another word for it. */
  const more = () => {
    const result = sheet.output(props.cell, props.output);
    if (!result) return undefined;
    const v = leading(result.check);
    const parts: string[] = [];
    if (v.by !== undefined && v.at) {
      const by = show.output(props.cell, props.output).change(Math.abs(v.by), standingFigure(result), false);
      if (!/[1-9]/.test(by)) parts.push(`on the ${AT[v.at]}`);
      else parts.push(v.by > 0 ? `${by} beyond the ${AT[v.at]}` : `${by} to the ${AT[v.at]}`);
    }
    if (v.side) parts.push(v.side);
    const { check } = result;
    if (check.where) parts.push('where read');
    return [parts.join(', '), serviceWords(check), ownRule(check.rule, sheet.state.rule), drawsWords(check)]
      .filter(Boolean)
      .join('; ');
  };
  /** Its own blank entry asks for itself. */
  const isOwnBlank = () => {
    const { problem } = shape() ?? {};
    return problem?.kind === 'blank' && problem.originId === props.cell;
  };
  // A line with neither limits nor anything amiss has no verdict worth a word.
  const told = () => state() !== undefined && state() !== 'no limits';
  return (
    <GridCell row={props.row} column="check">
      <Show when={told()}>
        <CheckMark
          state={state()!}
          more={more()}
          before={sheet.line(props.cell)?.moved[props.output]?.check}
        />
      </Show>
      <HeldCheck cell={props.cell} output={props.output} />
      <Show when={!isOwnBlank() && shape()?.problem}>
        {(problem) => <ProblemNote problem={problem()} cell={props.cell} brief />}
      </Show>
    </GridCell>
  );
};
