import { createResource, For, Show } from 'solid-js';
import type { Contribution } from '../../engine/rows/results.ts';
import { usesComma } from '../kit/decimal-mark.ts';
import { Part } from '../kit/part.tsx';
import { useSheet } from '../state/context.ts';
import { standingFigure } from '../state/moves.ts';
import { dofWords, uncertaintyText } from './uncertainty.tsx';

export interface BudgetProps {
  cell: string;
  output: string;
}

/** How much each source contributes to the spread: largest first, as bars and as figures. */
export const Budget = (props: BudgetProps) => {
  const { sheet, show, goTo } = useSheet();
  const [shares] = createResource(
    () => ({ cell: props.cell, output: props.output, rev: sheet.state.rev }),
    // Behind the figures that the same change draws.
    async ({ cell, output }) => {
      await new Promise((done) => setTimeout(done));
      return sheet.engine.budget(cell, output).catch((): Contribution[] => []);
    },
  );
  const list = () => shares.latest ?? [];
  const variance = () => list().reduce((sum, share) => sum + share.u ** 2, 0);
  const part = (share: Contribution) => (variance() > 0 ? share.u ** 2 / variance() : 0);
  const standing = () => standingFigure(sheet.line(props.cell)?.result?.outputs[props.output]);
  const at = () => show.output(props.cell, props.output);
  return (
    <Show when={list().length > 0}>
      <Part title="Where the spread comes from">
        <table class="budget">
          <thead>
            <tr>
              <th scope="col">source</th>
              <th scope="col">share</th>
              <th scope="col" class="figure">
                u
              </th>
              <th scope="col" class="figure">
                lowest, highest effect
              </th>
            </tr>
          </thead>
          <tbody>
            <For each={list()}>
              {(share) => (
                <tr>
                  <td>
                    <Show when={share.cell !== props.cell && sheet.line(share.cell)} fallback={share.label}>
                      <button type="button" class="go" onClick={() => goTo(share.cell)}>
                        {share.label}
                      </button>
                    </Show>
                  </td>
                  <td>
                    <svg class="block w-4rem h-12px" viewBox="0 0 64 12" aria-hidden="true">
                      <rect class="fill-ink" x="0" y="2" width={Math.max(1, 64 * part(share))} height="8" />
                    </svg>
                    {Math.round(100 * part(share))} %
                  </td>
                  <td class="figure">
                    {uncertaintyText(at(), share.u, standing())}
                    <Show when={Number.isFinite(share.dof)}>
                      <br />
                      <span class="caption">ν {dofWords(share.dof, usesComma())}</span>
                    </Show>
                  </td>
                  <td class="figure">
                    {at().change(share.low, standing())}
                    <br />
                    {at().change(share.high, standing())}
                  </td>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </Part>
    </Show>
  );
};
