import type { DrawingValues, WorkedExample } from '../../../cells/record/cell.ts';
import { formatFigure } from '../../../shared/quantities/printed-figure.ts';
import { displayUnit } from '../../../shared/quantities/quantities.ts';
import type { WorkedOut } from '../../engine/book/worked-example.ts';
import type { OutputResult } from '../../engine/rows/results.ts';
import type { Reference } from '../../language/syntax/syntax.ts';

/** SI values by name for the cell's drawing. */
export const valuesOf = ({ given, result }: WorkedOut): DrawingValues => ({
  ...Object.fromEntries(Object.entries(given).map(([name, one]) => [name, one.figure.value])),
  ...Object.fromEntries(Object.entries(result.outputs).map(([name, one]) => [name, one.planned?.value])),
});

/** An output with its spread; yes or no; or why there is none. */
export const outputText = (output: OutputResult, { units }: WorkedOut): string => {
  if (output.logical !== undefined) return output.logical ? 'yes' : 'no';
  if (!output.planned) return output.problem?.message ?? '—';
  return formatFigure(output.planned, displayUnit(output.quantity, units, output.display)).text;
};

/** A figure without its spread, by the name formulas use; what was typed where it is no quantity. */
export const numberOf = (
  ref: Pick<Reference, 'name' | 'output'>,
  worked: WorkedOut,
  example: WorkedExample,
): string | undefined => {
  const own = ref.output === undefined ? worked.result.outputs[ref.name] : undefined;
  const named = worked.given[ref.output === undefined ? ref.name : `${ref.name}.${ref.output}`];
  const figure = own?.planned ?? named?.figure;
  if (!figure) {
    const entry = example.inputs[ref.name];
    return typeof entry === 'string' ? entry : undefined;
  }
  const unit = displayUnit(own?.quantity ?? named?.quantity, worked.units, own?.display);
  const { value } = formatFigure(figure, unit);
  return unit.label === '' ? value : `${value} ${unit.label}`;
};

/** How near the source's figure is asked for. */
export const nearness = (within: string | number): string => {
  if (typeof within === 'string') return `± ${within}`;
  return within < 1e-6 ? 'to rounding' : `± ${Number((within * 100).toPrecision(3))} %`;
};
