import { handbook } from '../../../cells/handbook.ts';
import type { CellKind, DrawingValues } from '../../../cells/record/cell.ts';
import { parseEntry } from '../../language/parse.ts';
import type { Expr } from '../../language/syntax/syntax.ts';
import { standingFigure } from '../state/moves.ts';
import type { Sheet } from '../state/sheet.ts';

/** Where a name in a formula leads: to a figure, by the name of a line and of its output. */
type Named = (name: string, output: string | undefined) => number | undefined;

/** So many lines may name the next one for a size. */
const DEEP = 8;

/**
 * SI values for a cell's drawing: outputs as they stand, inputs from their own text, from the lines they take over, or by
 * arithmetic over both. An input that is calculated otherwise has no value here, and the drawing does without.
 */
export const drawingValues = (sheet: Sheet, cell: string, kind: CellKind): DrawingValues => {
  const line = sheet.line(cell);
  const results = line?.result?.outputs ?? {};
  const values: Record<string, number | undefined> = {};
  for (const input of kind.inputs) {
    if (input.choice || input.record) continue;
    const text = line?.record.inputs?.[input.name];
    values[input.name] = text
      ? nominal(sheet, text, input.quantity, ofLines(sheet))
      : nominal(
          sheet,
          input.default,
          input.quantity,
          (name) => values[name] ?? standingFigure(results[name])?.value,
        );
  }
  for (const [name, output] of Object.entries(results))
    values[name] = standingFigure(output)?.value ?? values[name];
  return values;
};

const ofLines =
  (sheet: Sheet, deep = 0): Named =>
  (name, output) => {
    const line = sheet.line(sheet.idOf(name) ?? '');
    const outputs = line?.result?.outputs;
    const figure = standingFigure(outputs?.[output ?? (outputs.value ? 'value' : 'mean')]);
    if (figure) return figure.value;
    const text = output && deep < DEEP ? line?.record.inputs?.[output] : undefined;
    return nominal(sheet, text, undefined, ofLines(sheet, deep + 1));
  };

const nominal = (
  sheet: Sheet,
  text: string | undefined,
  quantity: string | undefined,
  named: Named,
): number | undefined => {
  if (!text) return undefined;
  const { entry } = parseEntry(text, {
    ...(quantity !== undefined && { quantity }),
    units: { ...sheet.state.units },
    handbook,
  });
  if (entry.kind === 'value' || entry.kind === 'designation') return entry.value.value;
  return entry.kind === 'formula' ? arithmetic(entry.expr, named) : undefined;
};

const arithmetic = (expr: Expr, named: Named): number | undefined => {
  switch (expr.kind) {
    case 'literal':
      return expr.value;
    case 'ref':
      return named(expr.name, expr.output);
    case 'group':
      return arithmetic(expr.of, named);
    case 'negate': {
      const of = arithmetic(expr.of, named);
      return of === undefined ? undefined : -of;
    }
    case 'binary': {
      const [a, b] = [arithmetic(expr.left, named), arithmetic(expr.right, named)];
      if (a === undefined || b === undefined) return undefined;
      return { '+': a + b, '-': a - b, '*': a * b, '/': a / b, '^': a ** b }[expr.op];
    }
    default:
      return undefined;
  }
};
