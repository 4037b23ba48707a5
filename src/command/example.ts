import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';

const isBlank = (text: string | undefined): boolean => text === undefined || text.trim() === '';

const filled = (cell: CellRecord): CellRecord => {
  const copy = { ...cell };
  if (cell.example !== undefined && isBlank(cell.entry)) copy.entry = cell.example;
  if (cell.examples) {
    const inputs = { ...cell.inputs };
    for (const [name, text] of Object.entries(cell.examples)) if (isBlank(inputs[name])) inputs[name] = text;
    copy.inputs = inputs;
  }
  return copy;
};

/** The sheet with its emptied cells filled from their examples; what is filled in already stays. */
export const withExamples = (file: SheetFile): SheetFile => ({ ...file, cells: file.cells.map(filled) });
