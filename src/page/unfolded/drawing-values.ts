import { handbook } from '../../../cells/handbook.ts';
import type { CellKind, DrawingValues } from '../../../cells/record/cell.ts';
import { parseEntry } from '../../language/parse.ts';
import { standingFigure } from '../state/moves.ts';
import { referred } from '../state/referred.ts';
import type { Sheet } from '../state/sheet.ts';

/**
 * SI values for a cell's drawing: outputs as they stand, inputs from the lines they take over, or read from their own
 * text. An input that is calculated has no value here, and the drawing does without.
 */
export const drawingValues = (sheet: Sheet, cell: string, kind: CellKind): DrawingValues => {
  const line = sheet.line(cell);
  const values: Record<string, number | undefined> = {};
  for (const input of kind.inputs) {
    if (input.choice || input.record) continue;
    const text = line?.record.inputs?.[input.name] ?? input.default;
    values[input.name] = referred(sheet, text)?.figure.value ?? literal(sheet, text, input.quantity);
  }
  for (const [name, output] of Object.entries(line?.result?.outputs ?? {})) {
    values[name] = standingFigure(output)?.value ?? values[name];
  }
  return values;
};

const literal = (
  sheet: Sheet,
  text: string | undefined,
  quantity: string | undefined,
): number | undefined => {
  if (text === undefined) return undefined;
  const { entry } = parseEntry(text, {
    ...(quantity !== undefined && { quantity }),
    units: { ...sheet.state.units },
    handbook,
  });
  return entry.kind === 'value' || entry.kind === 'designation' ? entry.value.value : undefined;
};
