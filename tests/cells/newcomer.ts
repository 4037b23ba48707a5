import type { CellKind } from '../../cells/record/cell.ts';
import { sameDimension } from '../../shared/dimension.ts';
import { quantityKind } from '../../shared/quantities/quantities.ts';
import { NO_HANDBOOK, parseEntry } from '../../src/language/parse.ts';
import { sizeOf } from '../../src/language/syntax/size-of.ts';

/** What is wrong with the sensible ranges of a cell's inputs, and what to do. */
export const sensibleProblems = (kind: Pick<CellKind, 'key' | 'inputs'>): string[] =>
  kind.inputs.flatMap(({ name, quantity, sensible }) => {
    if (!sensible) return [];
    const where = `${kind.key}, sensible range of ${name}`;
    if (quantity === undefined) return [`${where}: the input is no quantity; leave the range out.`];
    // Only a plain number goes without a unit: elsewhere it would take one from the sheet.
    const context = { units: { length: 'mm' }, handbook: NO_HANDBOOK } as const;
    const ends = sensible.map((text) => {
      const { entry, problems } = parseEntry(
        text,
        quantity === 'number' ? { ...context, quantity } : context,
      );
      return problems.length > 0 ? undefined : sizeOf(entry);
    });
    const wrong = sensible.filter((_, i) => {
      const dimension = quantityKind(quantity)?.dimension;
      return !ends[i] || !dimension || !sameDimension(ends[i].dimension, dimension);
    });
    if (wrong.length > 0)
      return [`${where}: ${wrong.join(' and ')} is no ${quantity}; write it in a unit of ${quantity}.`];
    return ends[0]!.value < ends[1]!.value
      ? []
      : [`${where}: ${sensible.join(' to ')} runs backwards; turn it round.`];
  });
