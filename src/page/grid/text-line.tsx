import { say } from '../kit/words.ts';
import { useSheet } from '../state/context.ts';
import { lineRow } from '../state/row-key.ts';
import { AsideNote } from './aside-note.tsx';
import { GridCell } from './grid-cell.tsx';
import { GridRow } from './grid-row.tsx';
import { NumberCell } from './number-cell.tsx';
import { UnfoldedRow } from './unfolded-row.tsx';

/** A heading or a remark: text across the sheet. */
export const TextLine = (props: { cell: string }) => {
  const { sheet } = useSheet();
  const record = () => sheet.line(props.cell)!.record;
  const text = () => say((record().role === 'remark' && record().note) || record().label || '');
  return (
    <>
      <GridRow row={lineRow(props.cell)} cell={props.cell} class={record().role}>
        <NumberCell row={lineRow(props.cell)} cell={props.cell} />
        <GridCell row={lineRow(props.cell)} column="name" unfolds span={5}>
          {text() || <span class="caption">empty {record().role === 'remark' ? 'remark' : 'heading'}</span>}
          <AsideNote record={record()} />
        </GridCell>
      </GridRow>
      <UnfoldedRow row={lineRow(props.cell)} />
    </>
  );
};
