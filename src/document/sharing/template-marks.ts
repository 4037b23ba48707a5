import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';

/** What a template's author says of one line. */
export interface Mark {
  /** The next user must fill it in. */
  fill: boolean;
  /** Formula and limits are the author's; changing them asks first. */
  locked: boolean;
}

export const markOf = ({ fill, locked }: CellRecord): Mark => ({
  fill: fill === true,
  locked: locked === true,
});

/** Lines that hold something to fill in or to lock. */
export const markable = ({ role }: CellRecord): boolean => role !== 'section' && role !== 'remark';

const isFormula = (entry: string | undefined): boolean => entry?.trimStart().startsWith('=') === true;

function marked(cell: CellRecord, { fill, locked }: Mark): CellRecord {
  const { fill: _fill, locked: _locked, ...rest } = cell;
  const record: CellRecord = { ...rest, ...(fill && { fill }), ...(locked && { locked }) };
  // A number the next user must find stays as an example only; a formula is worth keeping.
  if (fill && record.entry && !isFormula(record.entry)) {
    record.example = record.entry;
    delete record.entry;
  }
  return record;
}

/** A template with its author's marks, by cell id. */
export const withMarks = (template: SheetFile, marks: ReadonlyMap<string, Mark>): SheetFile => ({
  ...template,
  cells: template.cells.map((cell) => {
    const mark = marks.get(cell.id);
    return mark && markable(cell) ? marked(cell, mark) : cell;
  }),
});
