import type { SheetFile } from '../../shared/sheet/format.ts';
import type { CheckName } from '../engine/trial/checks.ts';

/** How a check is called: name of the cell, or of its output, and its label. */
export const checkTitles = (file: SheetFile) => {
  const byId = new Map(file.cells.map((cell) => [cell.id, cell]));
  return ({ cell, output, as }: CheckName): string => {
    const record = byId.get(cell);
    const name = record?.name ?? record?.label ?? cell;
    const called = output === '' || output === 'value' ? name : `${name}.${output}`;
    const label = record?.label && record.label !== name ? ` (${record.label})` : '';
    return as === 'service' ? `${called}${label}, in service` : `${called}${label}`;
  };
};

/** The same for another program: the name in formulas, and whether it is of a new part, in service, or of what must hold for a cell. */
export const checkNames = (file: SheetFile) => {
  const nameOf = new Map(file.cells.map((cell) => [cell.id, cell.name ?? cell.id]));
  return ({ cell, output, as }: CheckName) => ({
    check: output === '' || output === 'value' ? nameOf.get(cell) : `${nameOf.get(cell)}.${output}`,
    as: as === 'new' ? 'as-new' : as === 'service' ? 'in-service' : 'validity',
  });
};
