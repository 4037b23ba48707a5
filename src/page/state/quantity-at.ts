import type { QuantityAt } from '../../document/sharing/own-units.ts';
import type { Library } from '../../engine/rows/library.ts';

/** Kinds of quantity of the inputs and outputs of library cells. */
export const quantityAt =
  (library: Library): QuantityAt =>
  (cell, field) => {
    const kind = library.kinds.get(cell.kind ?? '');
    const [part, name] = field.split('.');
    if (part === 'inputs') {
      const input = kind?.inputs.find((one) => one.name === name);
      // What is chosen from a table, or is another line, takes no unit.
      return input?.choice || input?.record ? 'number' : input?.quantity;
    }
    if (part === 'outputs') return kind?.outputs.find((output) => output.name === name)?.quantity;
    return undefined;
  };
