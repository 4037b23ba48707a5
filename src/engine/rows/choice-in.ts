import type { ChoiceRow, ChoiceTable } from '../../../cells/record/cell.ts';

/** The row of a table that a text names, by its key, its name or a key of an earlier edition. */
export function choiceIn(table: ChoiceTable, text: string): ChoiceRow | undefined {
  const wanted = text.trim().toLowerCase();
  return (
    table.rows.find((one) => one.key.toLowerCase() === wanted || one.name.toLowerCase() === wanted) ??
    table.rows.find((one) => one.formerKeys?.includes(wanted))
  );
}
