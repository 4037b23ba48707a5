import type { CellKind } from '../../../cells/record/cell.ts';
import { type Problem, problem } from '../../../shared/problem.ts';
import { quantityKind } from '../../../shared/quantities/quantities.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';

/** What a sheet says of a line and this program does not know: passed over, a verdict could be wrong. */

const NEWER = 'Open the sheet with a newer edition of the program.';

/** A kind of quantity that a later edition may have: what its figures are counted in is not known here. */
export const unknownQuantity = ({ quantity }: CellRecord): Problem | undefined =>
  quantity && !quantityKind(quantity)
    ? problem(
        'unknown-key',
        `There is no kind of quantity called "${quantity}" here: the line is kept as it is. ${NEWER}`,
        { field: 'quantity' },
      )
    : undefined;

/** A later edition of a cell may judge by other formulas. */
export const newerEdition = ({ edition = 0 }: CellRecord, kind: CellKind): Problem | undefined =>
  edition > kind.edition
    ? problem(
        'unknown-key',
        `Made with edition ${edition} of this cell, and there is edition ${kind.edition} here, which may judge otherwise: the cell is kept as it is. ${NEWER}`,
        { field: 'edition' },
      )
    : undefined;

/** Inputs, and outputs with limits or a reading, that the kind does not have. */
export function unknownParts({ inputs = {}, outputs = {} }: CellRecord, kind: CellKind): Problem[] {
  const without = (what: string, field: string, name: string): Problem =>
    problem(
      'unknown-key',
      `${kind.title} has no ${what} "${name}": it is kept, and no figure or verdict goes by it.`,
      { field },
    );
  const lacks = (of: readonly { name: string }[], name: string) => !of.some((one) => one.name === name);
  return [
    ...Object.entries(inputs)
      .filter(([name, text]) => text.trim() && lacks(kind.inputs, name))
      .map(([name]) => without('input', `inputs.${name}`, name)),
    ...Object.entries(outputs)
      .filter(([name, { limits, measured }]) => (limits || measured) && lacks(kind.outputs, name))
      .map(([name]) => without('output', `outputs.${name}`, name)),
  ];
}
