import { Match, Show, Switch } from 'solid-js';
import { useSheet } from '../state/context.ts';
import { type DrawsState, drawsOf } from './draws.ts';
import { DrawsOutcome } from './outcome.tsx';
import './draws.css';

const grouped = (n: number): string => n.toLocaleString('en-GB').replaceAll(',', '\u202f');

/** The line simulated many times over (JCGM 101): asked for, with its progress, and cancelled at will. */
export default function DrawsPanel(props: { cell: string; output: string }) {
  const { sheet } = useSheet();
  const draws = drawsOf(sheet);
  const there = () => {
    const state = draws.state();
    return state.is === 'there' ? state : undefined;
  };
  const running = () => {
    const state = draws.state();
    return state.is === 'running' ? state : undefined;
  };
  const drawn = () =>
    there()?.simulation.outputs.find((one) => one.cell === props.cell && one.output === props.output);
  const without = () =>
    there()?.simulation.without.find((one) => one.cell === props.cell && one.output === props.output);
  const stale = () => there() !== undefined && there()!.rev !== sheet.state.rev;
  return (
    <section class="draws">
      <h3 class="part-head">Simulated</h3>
      <Switch>
        <Match when={running()}>
          {(state) => (
            <div class="along">
              <progress
                class="flex-[1_1_10rem] accent-pencil"
                max={state().of}
                value={state().done}
                aria-label="Assemblies simulated"
              />
              <span class="caption">
                {grouped(state().done)} of {grouped(state().of)}
              </span>
              <button type="button" onClick={() => state().cancel()}>
                Cancel
              </button>
            </div>
          )}
        </Match>
        <Match when={true}>
          <button type="button" disabled={sheet.state.rev === 0} onClick={() => void draws.run()}>
            {there() ? 'Simulate again' : 'Simulate 200 000 assemblies'}
          </button>
        </Match>
      </Switch>
      <Show when={(draws.state() as Extract<DrawsState, { is: 'failed' }>).message}>
        {(message) => <p role="alert">The simulation could not be carried out: {message()}</p>}
      </Show>
      <Show when={stale()}>
        <p class="caption" role="status">
          These simulated assemblies are from before the last change of the sheet.
        </p>
      </Show>
      <Show when={drawn()}>{(one) => <DrawsOutcome simulation={there()!.simulation} drawn={one()} />}</Show>
      <Show when={without()}>
        {(one) => <p>{one().problem?.message ?? 'There is no figure here to simulate.'}</p>}
      </Show>
    </section>
  );
}
