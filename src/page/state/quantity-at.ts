import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { QuantityAt } from '../../document/sharing/own-units.ts';
import type { Library } from '../../engine/rows/library.ts';

/** Kinds of quantity of the inputs and outputs of library cells. */
export const quantityAt = (library: Library): QuantityAt => {
  const kindOf = (cell: CellRecord) => library.kinds.get(cell.kind ?? '');
  const quantity = (cell: CellRecord, field: string): string | undefined => {
    const kind = kindOf(cell);
    const [part, name] = field.split('.');
    if (part === 'inputs') {
      const input = kind?.inputs.find((one) => one.name === name);
      // What is chosen from a table, or is another line, takes no unit.
      return input?.choice || input?.record ? 'number' : input?.quantity;
    }
    if (part === 'outputs') return kind?.outputs.find((output) => output.name === name)?.quantity;
    return undefined;
  };
  return Object.assign(quantity, {
    shown: (cell: CellRecord, output: string) =>
      kindOf(cell)?.outputs.find(({ name }) => name === output)?.display,
  });
};
