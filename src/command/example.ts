import type { CellRecord, Limits, SheetFile } from '../../shared/sheet/format.ts';
import { wordsOnOneLine } from './one-line.ts';

const isBlank = (text: string | undefined): boolean => text === undefined || text.trim() === '';

const LIMITS = ['lower', 'upper', 'wear'] as const;

const filledLimits = (limits: Limits): Limits => {
  const copy = { ...limits };
  for (const which of LIMITS) {
    const example = limits[`${which}Example`];
    if (example !== undefined && isBlank(copy[which])) copy[which] = example;
  }
  return copy;
};

const filled = (cell: CellRecord): CellRecord => {
  const copy = { ...cell };
  if (cell.example !== undefined && isBlank(cell.entry)) copy.entry = cell.example;
  if (cell.examples) {
    const inputs = { ...cell.inputs };
    for (const [name, text] of Object.entries(cell.examples)) if (isBlank(inputs[name])) inputs[name] = text;
    copy.inputs = inputs;
  }
  if (cell.limits) copy.limits = filledLimits(cell.limits);
  if (cell.outputs) {
    copy.outputs = Object.fromEntries(
      Object.entries(cell.outputs).map(([name, settings]) => [
        name,
        settings.limits ? { ...settings, limits: filledLimits(settings.limits) } : settings,
      ]),
    );
  }
  return copy;
};

/** The sheet with its emptied cells and limits filled from their examples; what is filled in already stays. */
export const withExamples = (file: SheetFile): SheetFile => ({ ...file, cells: file.cells.map(filled) });

/** The sheet of a file as a command takes it: its words on one line each, with the examples where they are asked for. */
export function asAsked(file: SheetFile, { example }: { example: boolean }): SheetFile {
  const sheet = wordsOnOneLine(file);
  return example ? withExamples(sheet) : sheet;
}
