import { For, Show } from 'solid-js';
import { isOfForm } from '../../engine/report/judged-by.ts';
import { say } from '../kit/words.ts';
import { useSheet } from '../state/context.ts';

/** A set of readings: mean, least, greatest, out-of-round, taper. */
export const ReadingsPart = (props: { cell: string }) => {
  const { sheet, show } = useSheet();
  /** One reading alone has no scatter, so nothing to tell. */
  const outputs = () => {
    const all = Object.entries(sheet.line(props.cell)?.result?.outputs ?? {});
    const told = all.filter(([name, output]) => name !== 'value' && isOfForm(name, output));
    return told.some(([name, { planned, measured }]) => name === 'range' && (planned ?? measured))
      ? told
      : [];
  };
  return (
    <Show when={outputs().length > 0}>
      <section>
        <h3 class="part-head">The readings</h3>
        <table class="budget">
          <tbody>
            <For each={outputs()}>
              {([name, output]) => (
                <tr>
                  <th scope="row">{say(output.label ?? name)}</th>
                  <td class="figure">
                    <Show when={output.planned ?? output.measured} fallback="not read">
                      {(figure) => <>{show.output(props.cell, name).value(figure())}</>}
                    </Show>
                  </td>
                  <td class="figure">
                    <Show when={output.planned ?? output.measured}>
                      {(figure) => <>{show.output(props.cell, name).spread(figure(), true)}</>}
                    </Show>
                  </td>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </section>
    </Show>
  );
};
