import { Show } from 'solid-js';
import type { CellOutput } from '../../../cells/record/cell.ts';
import { useSheet } from '../state/context.ts';
import { outputRow } from '../state/row-key.ts';
import { titled } from '../state/titled.ts';
import { CheckCell } from './check-cell.tsx';
import { EntryCell } from './entry-cell.tsx';
import { GridCell } from './grid-cell.tsx';
import { GridRow, StillCell } from './grid-row.tsx';
import { LimitsCell } from './limits-cell.tsx';
import { UnfoldedRow } from './unfolded-row.tsx';
import { ValueCell } from './value-cell.tsx';

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
  const planned = () => line().shape?.outputs[name()]?.planned !== undefined;
  const named = () => (line().record.name ? `${line().record.name}.${name()}` : name());
  return (
    <>
      <GridRow
        row={row()}
        cell={props.cell}
        class={props.output.ofPart && planned() ? 'part output of-part' : 'part output'}
      >
        <StillCell class="number" />
        <GridCell row={row()} column="name" unfolds>
          <span class="label">{props.output.label}</span>
          <span class="named ml-1 caption">{named()}</span>
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
              {(gauge) => <span class="beside block caption">by {titled(sheet, gauge())}</span>}
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
