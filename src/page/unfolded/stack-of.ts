import type { Library } from '../../engine/rows/library.ts';
import type { Figure } from '../../engine/rows/results.ts';
import { isFormula } from '../../language/grammar/tree.ts';
import { parseFormula } from '../../language/parse.ts';
import type { Literal, Reference } from '../../language/syntax/syntax.ts';
import { standingFigure } from '../state/moves.ts';
import { referred } from '../state/referred.ts';
import type { Sheet } from '../state/sheet.ts';
import type { StackItem } from './bars.ts';
import { stackTerms } from './terms.ts';

export interface StackTerm extends StackItem {
  /** What people call it. */
  title: string;
  /** Line to go to; absent for a number that stands in the formula itself. */
  cell?: string;
  /** The output of that line it is. */
  output?: string;
}

const formulaOf = (
  sheet: Sheet,
  library: Library | undefined,
  cell: string,
  output: string,
): string | undefined => {
  const record = sheet.line(cell)?.record;
  if (record?.role === 'cell')
    return library?.kinds.get(record.kind ?? '')?.outputs.find(({ name }) => name === output)?.formula;
  return record?.entry && isFormula(record.entry) ? record.entry : undefined;
};

const ofLiteral = (literal: Literal): Omit<StackTerm, 'sign'> => ({
  title: literal.text,
  value: literal.value,
  low: literal.value,
  high: literal.value,
});

const ofFigure = ({ value, low, high }: Figure) => ({ value, low, high });

const ofReference = (
  sheet: Sheet,
  library: Library | undefined,
  cell: string,
  ref: Reference,
): Omit<StackTerm, 'sign'> | undefined => {
  const record = sheet.line(cell)?.record;
  if (record?.role !== 'cell') {
    const id = sheet.idOf(ref.name);
    const outputs = id && sheet.line(id)?.result?.outputs;
    if (!id || !outputs) return undefined;
    const output = ref.output ?? (outputs.value ? 'value' : 'mean');
    const figure = standingFigure(outputs[output]);
    const title =
      output === 'value' || output === 'mean'
        ? sheet.titleOf(id)
        : `${sheet.titleOf(id)}: ${outputs[output]?.label ?? output}`;
    return figure && { title, cell: id, output, ...ofFigure(figure) };
  }
  if (ref.output !== undefined) return undefined;
  const kind = library?.kinds.get(record.kind ?? '');
  const own = standingFigure(sheet.line(cell)?.result?.outputs[ref.name]);
  if (own)
    return {
      title: kind?.outputs.find(({ name }) => name === ref.name)?.label ?? ref.name,
      ...ofFigure(own),
    };
  const taken = referred(sheet, record.inputs?.[ref.name]);
  return (
    taken && {
      title: sheet.titleOf(taken.cell),
      cell: taken.cell,
      output: taken.output,
      ...ofFigure(taken.figure),
    }
  );
};

/** The dimensions that a line adds and takes away; nothing where it is no stack of two or more known lengths. */
export const stackOf = (
  sheet: Sheet,
  library: Library | undefined,
  cell: string,
  output: string,
): StackTerm[] | undefined => {
  if (sheet.line(cell)?.result?.outputs[output]?.quantity !== 'length') return undefined;
  const formula = formulaOf(sheet, library, cell, output);
  const expr = formula && parseFormula(formula, { units: { ...sheet.state.units }, quantity: 'length' }).expr;
  const terms = expr ? stackTerms(expr) : undefined;
  if (!terms || terms.length < 2) return undefined;
  const found = terms.map(({ sign, of }) => {
    const term = of.kind === 'literal' ? ofLiteral(of) : ofReference(sheet, library, cell, of);
    return term && { ...term, sign };
  });
  return found.every((term) => term !== undefined) ? found : undefined;
};
