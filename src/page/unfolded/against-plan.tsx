import { Show } from 'solid-js';
import type { Figure } from '../../engine/rows/results.ts';
import { useSheet } from '../state/context.ts';

/** Beyond so many standard uncertainties a difference is more than its doubt explains (k = 2). */
const COVERAGE = 2;

/** By how much the part came out from the plan: in units, and against the doubt of the difference. */
export const AgainstPlan = (props: { cell: string; output: string }) => {
  const { sheet, show } = useSheet();
  const output = () => sheet.line(props.cell)?.result?.outputs[props.output];
  const at = () => show.output(props.cell, props.output);
  const both = () => {
    const { planned, measured, difference } = output() ?? {};
    return planned && measured && difference ? { planned, measured, difference } : undefined;
  };
  return (
    <Show when={both()}>
      {(figures) => (
        <section>
          <h3 class="part-head">Planned and measured</h3>
          <table class="budget">
            <tbody>
              <tr>
                <th scope="row">planned</th>
                <td class="figure">{at().value(figures().planned)}</td>
                <td class="figure">{at().beside(figures().planned, false)}</td>
              </tr>
              <tr>
                <th scope="row">measured</th>
                <td class="figure">{at().value(figures().measured)}</td>
                <td class="figure">{at().beside(figures().measured, true)}</td>
              </tr>
              <tr>
                <th scope="row">difference</th>
                <td class="figure">{at().change(figures().difference.value, figures().difference)}</td>
                <td class="figure">{at().beside(figures().difference, true)}</td>
              </tr>
            </tbody>
          </table>
          <p>{inUncertainties(figures().difference)}</p>
        </section>
      )}
    </Show>
  );
};

/** The difference in standard uncertainties of itself, and what that says. */
export const inUncertainties = ({ value, u }: Pick<Figure, 'value' | 'u'>): string => {
  if (!(u > 0)) return 'Neither has a doubt to compare the difference with.';
  const ratio = Math.abs(value) / u;
  const times = ratio < 10 ? ratio.toFixed(1) : String(Math.round(ratio));
  return ratio <= COVERAGE
    ? `That is ${times} standard uncertainties of the difference: no more than the doubt of both explains.`
    : `That is ${times} standard uncertainties of the difference, more than the doubt of both explains: the cut, the plan or a reading is off.`;
};
