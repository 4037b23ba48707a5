import { displayUnit, quantityKind } from '../../../shared/quantities/quantities.ts';
import { isUnit, parseUnit } from '../../../shared/units/units.ts';
import { SelectField } from '../kit/select-field.tsx';
import { useSheet } from '../state/context.ts';

const labelOf = (symbol: string): string => {
  const unit = symbol === '' ? undefined : parseUnit(symbol);
  return unit && isUnit(unit) ? unit.label : symbol || 'plain number';
};

/** The unit a figure is shown in; the sheet's own unless another is wanted. No value changes by it. */
export const UnitField = (props: { cell: string; output: string; path: string }) => {
  const { sheet } = useSheet();
  const line = () => sheet.line(props.cell);
  const value = () =>
    (props.path === 'display' ? line()?.record.display : line()?.record.outputs?.[props.output]?.display) ??
    '';
  const shape = () => sheet.shape(props.cell, props.output);
  const quantity = () => shape()?.quantity ?? line()?.record.quantity;
  const options = () => {
    const kind = quantity() === undefined ? undefined : quantityKind(quantity()!);
    const own = displayUnit(quantity(), sheet.state.units, shape()?.display);
    const symbols = new Set([
      ...(kind?.units.in ?? []),
      ...(kind?.units.mm ?? []),
      ...(value() ? [value()] : []),
    ]);
    return [
      { value: '', label: own.label ? `as the sheet (${own.label})` : 'as the sheet' },
      ...[...symbols]
        .filter((symbol) => symbol !== '')
        .map((symbol) => ({ value: symbol, label: labelOf(symbol) })),
    ];
  };
  return (
    <SelectField
      label="Shown in"
      value={value()}
      options={options()}
      onCommit={(unit) => sheet.document.setField(props.cell, props.path, unit || undefined)}
    />
  );
};
