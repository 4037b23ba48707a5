import { For, Show } from 'solid-js';
import { bandOf } from '../../../shared/checks/band.ts';
import { extremesOf } from '../../engine/report/judged-by.ts';
import { writtenOut } from '../kit/decimal-mark.ts';
import { LimitBar } from '../kit/limit-bar.tsx';
import { wantedLimits } from '../state/asked.ts';
import { useSheet } from '../state/context.ts';
import { judgedText } from '../state/judged-text.ts';
import { standingFigure } from '../state/moves.ts';
import type { RowKey } from '../state/row-key.ts';
import { GridCell } from './grid-cell.tsx';

export interface LimitsCellProps {
  row: RowKey;
  cell: string;
  output: string;
}

const WORDS = { lower: 'lower', upper: 'upper', wear: 'wear limit' } as const;

export const LimitsCell = (props: LimitsCellProps) => {
  const { show, sheet } = useSheet();
  const at = () => show.output(props.cell, props.output);
  const shape = () => sheet.shape(props.cell, props.output);
  const result = () => sheet.output(props.cell, props.output);
  const figure = () => standingFigure(result());
  const read = () => shape()?.stands === 'measured' || sheet.line(props.cell)?.record.role === 'measured';
  const limits = () => result()?.limits;
  const band = () => figure() && bandOf(figure()!, result(), read());
  const ends = () => extremesOf(result());
  const own = () => {
    const record = sheet.line(props.cell)?.record;
    return record?.role === 'cell' ? record.outputs?.[props.output]?.limits : record?.limits;
  };
  const wanted = () => wantedLimits(own());
  const limit = (side: { value: number }) => at().limit(side.value, figure(), band());
  const limitNumber = (side: { value: number } | undefined) =>
    side && at().limitNumber(side.value, figure(), band());
  const words = () => {
    const { lower, upper, wear } = limits() ?? {};
    const parts = [
      figure() && `${at().value(figure()!, band())}, ${at().spread(figure()!, band()!)}`,
      judgedText(result(), at()),
      lower && `lower limit ${limit(lower)}`,
      upper && `upper limit ${limit(upper)}`,
      wear && `wear limit ${limit(wear)}`,
    ];
    return parts.filter(Boolean).join('; ');
  };
  return (
    <GridCell row={props.row} column="limits">
      <For each={wanted()}>
        {(which) => (
          <span class="caption">
            {WORDS[which]} to be filled in, e.g. {writtenOut(own()![`${which}Example`]!)}
          </span>
        )}
      </For>
      <Show when={shape()?.limits}>
        <LimitBar
          lower={limits()?.lower?.value}
          upper={limits()?.upper?.value}
          wear={limits()?.wear?.value}
          value={figure()?.value}
          low={(ends()?.least.band ?? band())?.low}
          high={(ends()?.greatest.band ?? band())?.high}
          before={sheet.line(props.cell)?.moved[props.output]?.from}
          metalOn={limits()?.metalOn}
          actual={read()}
          lowerText={limitNumber(limits()?.lower)}
          upperText={limitNumber(limits()?.upper)}
          words={words()}
        />
      </Show>
    </GridCell>
  );
};
