import { For, Match, Show, Switch } from 'solid-js';
import type { GaugeFound } from '../../engine/window/gauge.ts';
import { Part } from '../kit/part.tsx';
import { useSheet } from '../state/context.ts';
import { createTried } from './tried.ts';

/** Which gauge would prove the size of a line by its limits, on request. */
export default function GaugePart(props: { cell: string; output: string }) {
  const { sheet } = useSheet();
  const limits = () => sheet.shape(props.cell, props.output)?.limits;
  const tried = createTried<'gauges'>(sheet, () => ({
    ask: 'gauges',
    cell: props.cell,
    output: props.output,
  }));
  const answer = () => {
    const now = tried.state();
    return now.is === 'there' ? now.answer : now.is === 'running' ? now.before : undefined;
  };
  const failed = () => {
    const now = tried.state();
    return now.is === 'failed' ? now.message : undefined;
  };
  return (
    <Show when={limits() && sheet.shape(props.cell, props.output)?.quantity === 'length'}>
      <Part title="Which gauge would prove it">
        <div class="gauge-part grid gap-2">
          <Switch>
            <Match when={tried.state().is === 'running' && !answer()}>
              <p role="status">Working it out.</p>
            </Match>
            <Match when={!answer()}>
              <p class="along">
                <button type="button" disabled={sheet.state.rev === 0} onClick={() => void tried.run()}>
                  Work out the doubt it allows
                </button>
              </p>
            </Match>
          </Switch>
          <Show when={failed()}>
            {(message) => <p role="alert">The doubt could not be worked out: {message()}</p>}
          </Show>
          <Show when={answer()?.is === 'none' && (answer() as { why: string }).why}>
            {(why) => <p>{why()}</p>}
          </Show>
          <Show when={answer()?.is === 'found' && (answer() as GaugeFound)}>
            {(found) => <GaugesSaid found={found()} />}
          </Show>
        </div>
      </Part>
    </Show>
  );
}

const GaugesSaid = (props: { found: GaugeFound }) => {
  const { show, goTo } = useSheet();
  const at = () => show.output(props.found.cell, props.found.output);
  const change = (si: number) =>
    at().change(si, { value: si, low: -si / 2, high: si / 2, centre: 0, u: 0 }, false);
  /** Never more than what is still enough. */
  const allowed = () => change(props.found.needed * (1 - 1e-9));
  const kind = () => (props.found.rule === 'worst-case' ? 'doubt at worst' : 'expanded uncertainty (k = 2)');
  const size = () =>
    `${props.found.isRead ? 'Read as' : 'If it comes out at'} ${at().amount(props.found.size)}`;
  return (
    <>
      <p>
        <Show
          when={Number.isFinite(props.found.needed)}
          fallback={`${size()}, it is proven whatever the doubt.`}
        >
          {size()}, it is proven with a {kind()} of <b>± {allowed()}</b> at most, for its {props.found.at}{' '}
          limit.
        </Show>
      </p>
      <Show
        when={props.found.gauges.length > 0}
        fallback={<p>The sheet has no gauge yet: add one to see whether it would do.</p>}
      >
        <table class="budget">
          <thead>
            <tr>
              <th scope="col">gauge at hand</th>
              <th scope="col" class="figure">
                doubt it leaves
              </th>
              <th scope="col">proves it</th>
            </tr>
          </thead>
          <tbody>
            <For each={props.found.gauges}>
              {(gauge) => (
                <tr>
                  <td>
                    <button type="button" class="go" onClick={() => goTo(gauge.cell)}>
                      {gauge.name}
                    </button>
                  </td>
                  <td class="figure">{gauge.doubt === undefined ? '' : `± ${change(gauge.doubt)}`}</td>
                  <td>{gauge.isShort ? 'does not reach it' : gauge.proves ? 'yes' : 'no'}</td>
                </tr>
              )}
            </For>
          </tbody>
        </table>
        <p class="caption">Whether a gauge reads a bore or a shaft is for you to know.</p>
      </Show>
    </>
  );
};
