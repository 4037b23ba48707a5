import { Show } from 'solid-js';
import type { CellOutput } from '../../../cells/cell.ts';
import { CheckCell } from '../sheet/check-cell.tsx';
import { useSheet } from '../sheet/context.ts';
import { EntryCell } from '../sheet/entry-cell.tsx';
import { GridCell } from '../sheet/grid-cell.tsx';
import { GridRow, StillCell } from '../sheet/grid-row.tsx';
import { LimitsCell } from '../sheet/limits-cell.tsx';
import { UnfoldedRow } from '../sheet/unfolded-row.tsx';
import { ValueCell } from '../sheet/value-cell.tsx';
import { outputRow } from '../state/cursor.ts';

export interface OutputLineProps {
  cell: string;
  output: CellOutput;
}

/** One output: its figure, bar and check; its entry is what was read off the part. */
export const OutputLine = (props: OutputLineProps) => {
  const { sheet } = useSheet();
  const row = () => outputRow(props.cell, props.output.name);
  const line = () => sheet.line(props.cell)!;
  const name = () => props.output.name;
  const settings = () => line().record.outputs?.[name()];
  const named = () => (line().record.name ? `${line().record.name}.${name()}` : name());
  return (
    <>
      <GridRow row={row()} cell={props.cell} class="part output">
        <StillCell class="number" />
        <GridCell row={row()} column="name" unfolds>
          <span class="label">{props.output.label}</span>
          <span class="named">{named()}</span>
        </GridCell>
        <EntryCell
          row={row()}
          spot={{
            cell: props.cell,
            field: `outputs.${name()}.measured.entry`,
            kind: 'entry',
            quantity: props.output.quantity,
          }}
          text={settings()?.measured?.entry}
          label={`As measured: ${props.output.label}, ${sheet.titleOf(props.cell)}`}
          blank="as measured"
          beside={
            <Show when={settings()?.measured?.gauge}>
              {(gauge) => <span class="beside">by {gauge()}</span>}
            </Show>
          }
        />
        <ValueCell row={row()} cell={props.cell} output={name()} />
        <LimitsCell row={row()} cell={props.cell} output={name()} />
        <CheckCell row={row()} cell={props.cell} output={name()} />
      </GridRow>
      <UnfoldedRow row={row()} />
    </>
  );
};
