import { SelectField } from '../kit/select-field.tsx';
import { say } from '../kit/words.ts';
import { useSheet } from '../state/context.ts';

interface NameFieldProps {
  cell: string;
  path: string;
  value: string | undefined;
}

/** Chooses one of the sheet's library cells of some kinds, by name. */
const CellNameField = (props: NameFieldProps & { label: string; none: string; kinds: readonly string[] }) => {
  const { sheet } = useSheet();
  const options = () => {
    const offered = sheet.state.order.flatMap((id) => {
      const record = sheet.line(id)?.record;
      return record?.role === 'cell' && props.kinds.includes(record.kind ?? '') && record.name
        ? [{ value: record.name, label: record.label ? say(record.label) : record.name }]
        : [];
    });
    const unknown = props.value && !offered.some((o) => o.value === props.value);
    return [
      { value: '', label: props.none },
      ...(unknown ? [{ value: props.value!, label: `${props.value} (not on this sheet)` }] : []),
      ...offered,
    ];
  };
  return (
    <SelectField
      label={props.label}
      value={props.value ?? ''}
      options={options()}
      onCommit={(name) => sheet.document.setField(props.cell, props.path, name || undefined)}
    />
  );
};

export const GaugeField = (props: NameFieldProps) => (
  <CellNameField {...props} label="Read with" none="doubt as typed" kinds={['gauge']} />
);

export const MaterialField = (props: NameFieldProps) => (
  <CellNameField {...props} label="Part is of" none="not corrected" kinds={['material']} />
);
