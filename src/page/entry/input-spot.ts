import type { Library } from '../../engine/rows/library.ts';
import type { Sheet } from '../state/sheet.ts';
import type { EntrySpot } from './spot.ts';

/** The place of a text of a cell, by its field: an input or output of a library cell as its kind has it. */
export const spotOfField = (
  sheet: Sheet,
  library: Library | undefined,
  cell: string,
  field: string,
): EntrySpot => {
  const line = sheet.line(cell);
  const kind = library?.kinds.get(line?.record.kind ?? '');
  const [part, name = ''] = field.split('.');
  const input = part === 'inputs' ? kind?.inputs.find((one) => one.name === name) : undefined;
  const quantity =
    part === 'inputs'
      ? input?.quantity
      : part === 'outputs'
        ? line?.result?.outputs[name]?.quantity
        : (line?.record.quantity ?? (field === 'entry' ? undefined : line?.result?.outputs.value?.quantity));
  return {
    cell,
    field,
    kind: field === 'tolerance' ? 'tolerance' : 'entry',
    quantity,
    role: input?.role,
  };
};
