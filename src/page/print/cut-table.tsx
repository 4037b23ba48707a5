import { For, Show } from 'solid-js';
import { useSheet } from '../state/context.ts';
import type { CutLine } from './paper-lines.ts';

/** Sizes to cut with their limits and the size to aim for, and an empty box for what came out. */
export const CutTable = (props: { lines: CutLine[] }) => {
  const { show } = useSheet();
  return (
    <Show when={props.lines.length > 0}>
      <section>
        <h2>To cut</h2>
        <table class="cut">
          <thead>
            <tr>
              <th>No.</th>
              <th>Dimension</th>
              <th>Size</th>
              <th>Least</th>
              <th>Greatest</th>
              <th>Aim</th>
              <th>Can still be cut if</th>
              <th class="actual">Actual size</th>
            </tr>
          </thead>
          <tbody>
            <For each={props.lines}>
              {(row) => {
                const at = show.output(row.cell, row.output);
                const f = row.figure;
                return (
                  <tr>
                    <td>{row.number}</td>
                    <td>
                      {row.title}
                      <Show when={row.word === 'released'}> (released)</Show>
                    </td>
                    <td class="figure">
                      {f ? at.value(f) : '—'}
                      <Show when={f && show.other(row.cell, row.output)}>
                        {(other) => <small>{other().value(f!)}</small>}
                      </Show>
                    </td>
                    <td class="figure">{f && f.low < f.high ? at.number(f.low, f) : ''}</td>
                    <td class="figure">{f && f.low < f.high ? at.number(f.high, f) : ''}</td>
                    <td class="figure">{f?.aim !== undefined ? at.number(f.aim, f) : ''}</td>
                    <td>
                      {row.limits?.metalOn === 'low'
                        ? 'small'
                        : row.limits?.metalOn === 'high'
                          ? 'large'
                          : ''}
                    </td>
                    <td class="actual">{row.measured ? at.value(row.measured) : ''}</td>
                  </tr>
                );
              }}
            </For>
          </tbody>
        </table>
      </section>
    </Show>
  );
};
