import { Show } from 'solid-js';
import { coverageFactor } from '../../../shared/statistics/coverage.ts';
import { studentBeyond } from '../../../shared/statistics/student.ts';
import type { Figure } from '../../engine/rows/results.ts';
import { usesComma } from '../kit/decimal-mark.ts';
import { Part } from '../kit/part.tsx';
import { useSheet } from '../state/context.ts';
import { standingFigure } from '../state/moves.ts';
import type { OutputShow } from '../state/show.ts';

const COVERAGE = 0.95;

/** The uncertainty of a figure in full (JCGM 100): standard, its effective degrees of freedom, coverage factor, expanded. */
export const Uncertainty = (props: { cell: string; output: string }) => {
  const { sheet, show } = useSheet();
  const figure = () => standingFigure(sheet.line(props.cell)?.result?.outputs[props.output]);
  const at = () => show.output(props.cell, props.output);
  const amount = (si: number, of: Figure) => uncertaintyText(at(), si, of);
  return (
    <Show when={figure()}>
      {(f) => (
        <Part title="Uncertainty">
          <table class="budget">
            <tbody>
              <tr>
                <th scope="row">standard uncertainty u</th>
                <td class="figure">{amount(f().u, f())}</td>
              </tr>
              <tr>
                <th scope="row">effective degrees of freedom</th>
                <td class="figure">{dofWords(f().dof, usesComma())}</td>
              </tr>
              <tr>
                <th scope="row">coverage factor for 95 %</th>
                <td class="figure">{decimal(coverageFactor(f().dof, COVERAGE).toFixed(2), usesComma())}</td>
              </tr>
              <tr>
                <th scope="row">expanded uncertainty for 95 %</th>
                <td class="figure">{amount(coverageFactor(f().dof, COVERAGE) * f().u, f())}</td>
              </tr>
            </tbody>
          </table>
          <p class="caption">{coverageWords(f().dof)}</p>
        </Part>
      )}
    </Show>
  );
};

/** An uncertainty to two significant figures (JCGM 100, 7.2.6). */
export const uncertaintyText = (at: OutputShow, u: number, of: Figure | undefined): string => {
  const value = of?.value ?? 0;
  return at.change(u, { value, low: value - u / 10, high: value + u / 10, centre: value, u }, false);
};

const decimal = (text: string, comma: boolean): string => (comma ? text.replace('.', ',') : text);

/** Degrees of freedom to one place while there are few. */
export const dofWords = (dof: number, comma = false): string =>
  dof === Number.POSITIVE_INFINITY
    ? '∞'
    : dof >= 1000
      ? 'more than 1000'
      : dof >= 100
        ? String(Math.floor(dof))
        : decimal((Math.floor(dof * 10) / 10).toFixed(1), comma);

/** What k = 2, which figures are printed with, comes to for so many degrees of freedom. */
export const coverageWords = (dof: number): string => {
  const rule = 'By Welch and Satterthwaite, and by Student’s t (JCGM 100, G.4 and G.6).';
  if (!Number.isFinite(dof)) return 'Nothing in it rests on few readings: normal (JCGM 100, G.6.6).';
  const covered = 100 * (1 - studentBeyond(2, dof));
  return `${rule} The k = 2 of decision rules and of printed figures covers ${Math.round(covered)} %${
    covered < 94 ? ': more readings would tell more' : ''
  }.`;
};
