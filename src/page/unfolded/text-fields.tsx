import { Show } from 'solid-js';
import { TextField } from '../kit/text-field.tsx';
import { useSheet } from '../state/context.ts';
import { WayField } from './way-field.tsx';

/** The text of a heading or a remark. */
export const TextFields = (props: { cell: string }) => {
  const { sheet } = useSheet();
  const record = () => sheet.line(props.cell)!.record;
  const field = () => (record().role === 'remark' ? 'note' : 'label');
  return (
    <>
      <TextField
        label={record().role === 'remark' ? 'Remark (Ctrl+Enter takes it)' : 'Heading'}
        value={record().role === 'remark' ? record().note || record().label : record().label}
        aside={{ sheet: sheet.document.id, cell: props.cell, field: field() }}
        onCommit={(text) => void sheet.document.setField(props.cell, field(), text)}
        {...(record().role === 'remark' && { lines: 3 })}
      />
      <Show when={record().role === 'section'}>
        <WayField cell={props.cell} record={record()} />
      </Show>
    </>
  );
};
