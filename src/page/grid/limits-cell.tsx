import { Show } from 'solid-js';
import { LimitBar } from '../kit/limit-bar.tsx';
import { useSheet } from '../state/context.ts';
import { standingFigure } from '../state/moves.ts';
import type { RowKey } from '../state/row-key.ts';
import { GridCell } from './grid-cell.tsx';

export interface LimitsCellProps {
  row: RowKey;
  cell: string;
  output: string;
}

export const LimitsCell = (props: LimitsCellProps) => {
  const { show, sheet } = useSheet();
  const at = () => show.output(props.cell, props.output);
  const outline = () => sheet.outline(props.cell, props.output);
  const result = () => sheet.output(props.cell, props.output);
  const figure = () => standingFigure(result());
  const read = () => outline()?.stands === 'measured' || sheet.line(props.cell)?.record.role === 'measured';
  const limits = () => result()?.limits;
  const words = () => {
    const { lower, upper, wear } = limits() ?? {};
    const parts = [
      figure() && `${at().value(figure()!)}, ${at().spread(figure()!, read())}`,
      lower && `lower limit ${at().amount(lower.value)}`,
      upper && `upper limit ${at().amount(upper.value)}`,
      wear && `wear limit ${at().amount(wear.value)}`,
    ];
    return parts.filter(Boolean).join('; ');
  };
  return (
    <GridCell row={props.row} column="limits">
      <Show when={outline()?.limits}>
        <LimitBar
          lower={limits()?.lower?.value}
          upper={limits()?.upper?.value}
          wear={limits()?.wear?.value}
          value={figure()?.value}
          low={figure()?.low}
          high={figure()?.high}
          before={sheet.line(props.cell)?.moved[props.output]?.from}
          metalOn={limits()?.metalOn}
          actual={read()}
          lowerText={limits()?.lower && at().number(limits()!.lower!.value)}
          upperText={limits()?.upper && at().number(limits()!.upper!.value)}
          words={words()}
        />
      </Show>
    </GridCell>
  );
};
