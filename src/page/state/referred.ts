import type { Figure } from '../../engine/rows/results.ts';
import { standingFigure } from './moves.ts';
import type { Sheet } from './sheet.ts';

export interface Referred {
  cell: string;
  output: string;
  figure: Figure;
}

const REFERENCE = /^\s*=\s*([^\s.()+*/^;-]+)(?:\.([^\s.()+*/^;-]+))?\s*$/u;

/** The figure an input takes over as it is: one cell, or one output of it, and nothing else. */
export const referred = (sheet: Sheet, text: string | undefined): Referred | undefined => {
  const [, name, wanted] = REFERENCE.exec(text ?? '') ?? [];
  const cell = name && sheet.idOf(name);
  const outputs = cell && sheet.line(cell)?.result?.outputs;
  if (!cell || !outputs) return undefined;
  const output = wanted ?? (outputs.value ? 'value' : 'mean');
  const figure = standingFigure(outputs[output]);
  return figure && { cell, output, figure };
};
