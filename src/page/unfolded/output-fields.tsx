import { useSheet } from '../state/context.ts';
import { LimitFields } from './limit-fields.tsx';
import { MeasuredFields } from './measured-fields.tsx';
import { UnitField } from './unit-field.tsx';

/** What a sheet can say of one output of a library cell. */
export const OutputFields = (props: { cell: string; output: string }) => {
  const { sheet } = useSheet();
  const settings = () => sheet.line(props.cell)!.record.outputs?.[props.output];
  const path = () => `outputs.${props.output}`;
  const spot = (field: string) => ({
    cell: props.cell,
    field,
    kind: 'entry' as const,
    quantity: sheet.shape(props.cell, props.output)?.quantity,
  });
  return (
    <div class="grid gap-2">
      <div class="fields">
        <UnitField cell={props.cell} output={props.output} path={`${path()}.display`} />
      </div>
      <LimitFields
        cell={props.cell}
        path={`${path()}.limits`}
        limits={settings()?.limits}
        spot={spot}
        locked={sheet.line(props.cell)!.record.locked === true}
      />
      <MeasuredFields
        cell={props.cell}
        path={`${path()}.measured`}
        measured={settings()?.measured}
        spot={spot}
      />
    </div>
  );
};
