import '../kit/formula.css';
import { createMemo, Show } from 'solid-js';
import { toMathML } from '../../language/display/mathml.ts';
import { isFormula } from '../../language/grammar/tree.ts';
import { parseFormula } from '../../language/parse.ts';
import type { Reference } from '../../language/syntax/syntax.ts';
import { useSheet } from '../state/context.ts';
import { useLibrary } from '../state/library.ts';
import { standingFigure } from '../state/moves.ts';

export interface FormulaPartProps {
  cell: string;
  output: string;
}

/** The formula set as mathematics, once with names and once with the numbers that stand for them. */
export const FormulaPart = (props: FormulaPartProps) => {
  const { sheet, show } = useSheet();
  const library = useLibrary();
  const record = () => sheet.line(props.cell)!.record;
  /** Formula of the line, or of the library's own output. */
  const text = () => {
    if (record().role !== 'cell')
      return record().entry && isFormula(record().entry!) ? record().entry : undefined;
    return library()
      ?.kinds.get(record().kind ?? '')
      ?.outputs.find((output) => output.name === props.output)?.formula;
  };
  const expr = createMemo(() => {
    const formula = text();
    return formula === undefined
      ? undefined
      : parseFormula(formula, { units: { ...sheet.state.units } }).expr;
  });
  const figureIn = (cell: string, output: string): string | undefined => {
    const figure = standingFigure(sheet.line(cell)?.result?.outputs[output]);
    return figure && show.output(cell, output).value(figure);
  };
  const main = (cell: string) => (sheet.line(cell)?.result?.outputs.value ? 'value' : 'mean');
  const numberOf = (ref: Reference): string | undefined => {
    if (record().role === 'cell') {
      if (ref.output === undefined) {
        const own = figureIn(props.cell, ref.name);
        if (own) return own;
      }
      const entry = record().inputs?.[ref.name];
      const kind = library()?.kinds.get(record().kind ?? '');
      const named = entry && sheet.idOf(entry.replace(/^=\s*/, ''));
      if (named) return figureIn(named, ref.output ?? main(named));
      return ref.output === undefined
        ? (entry ?? literalOnly(kind?.inputs.find((i) => i.name === ref.name)?.default))
        : undefined;
    }
    const id = sheet.idOf(ref.name);
    return id && figureIn(id, ref.output ?? main(id));
  };
  /** What the formula gives: the plan, also where the part has been read since. */
  const result = () => {
    const figure = sheet.line(props.cell)?.result?.outputs[props.output]?.planned;
    return figure ? show.output(props.cell, props.output).value(figure) : figureIn(props.cell, props.output);
  };
  return (
    <Show when={expr()}>
      {(e) => (
        <section>
          <h3 class="part-head">How it is worked out</h3>
          <p class="caption">in words</p>
          <div class="overflow-x-auto py-1" innerHTML={toMathML(e())} />
          <p class="caption">in numbers</p>
          <div class="overflow-x-auto py-1" innerHTML={toMathML(e(), { number: numberOf })} />
          <Show when={result()}>
            <p>
              = <b>{result()}</b>
            </p>
          </Show>
        </section>
      )}
    </Show>
  );
};

/** A default that is a formula has no number of its own to put in. */
const literalOnly = (text: string | undefined): string | undefined =>
  text === undefined || isFormula(text) ? undefined : text.replace(/\s*±.*$/, '');
