import { Show, Suspense } from 'solid-js';
import { late } from '../kit/late.tsx';
import { useSheet } from '../state/context.ts';
import { standingFigure } from '../state/moves.ts';
import { AgainstPlan } from './against-plan.tsx';
import { StackUp } from './stack-up.tsx';
import { Uncertainty } from './uncertainty.tsx';

const DrawsPanel = late('The simulation', () => import('./draws-panel.tsx'));

/** What supports a figure beside its formula: plan against part, how its sizes stack up, uncertainty, simulation. */
export const ProofParts = (props: { cell: string; output: string }) => {
  const { sheet } = useSheet();
  const output = () => (sheet.line(props.cell)?.result?.outputs[props.output] ? props.output : 'mean');
  /** A figure without a spread has nothing to draw. */
  const spreads = () => (standingFigure(sheet.line(props.cell)?.result?.outputs[output()])?.u ?? 0) > 0;
  return (
    <Show when={sheet.line(props.cell)?.result?.outputs[output()]}>
      <div class="proof grid gap-4 empty:hidden min-[760px]:col-span-2">
        <AgainstPlan cell={props.cell} output={output()} />
        <StackUp cell={props.cell} output={output()} />
        <Show when={spreads()}>
          <Uncertainty cell={props.cell} output={output()} />
          <Suspense>
            <DrawsPanel cell={props.cell} output={output()} />
          </Suspense>
        </Show>
      </div>
    </Show>
  );
};
