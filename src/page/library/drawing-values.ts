import type { CellKind, DrawingValues } from '../../../cells/cell.ts';
import { standingFigure } from '../state/moves.ts';
import type { Sheet } from '../state/sheet.ts';

/**
 * SI values for a cell's drawing. Inputs come from the results where the engine reports them, else from the line an
 * input refers to by its bare name.
 */
export const drawingValues = (sheet: Sheet, cell: string, kind: CellKind): DrawingValues => {
  const line = sheet.line(cell);
  const outputs = line?.result?.outputs ?? {};
  const values: Record<string, number | undefined> = {};
  for (const [name, output] of Object.entries(outputs)) values[name] = standingFigure(output)?.value;
  for (const input of kind.inputs) {
    if (values[input.name] !== undefined || input.choice || input.record) continue;
    values[input.name] = referred(sheet, line?.record.inputs?.[input.name]);
  }
  return values;
};

const referred = (sheet: Sheet, text: string | undefined): number | undefined => {
  const [, name, output] = /^=?\s*([^\s.()+*/^-]+)(?:\.(\w+))?\s*$/.exec(text ?? '') ?? [];
  const id = name && sheet.idOf(name);
  if (!id) return undefined;
  return standingFigure(sheet.line(id)?.result?.outputs[output ?? 'value'])?.value;
};
