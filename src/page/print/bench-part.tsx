import { For, Show } from 'solid-js';
import { useSheet } from '../state/context.ts';
import { useLibrary } from '../state/library.ts';
import { readingLines, thingLines, workedLines } from './bench-lines.ts';

/** What is needed with the part in hand: figures of the cells, readings one by one, which gauge and which metal. */
export const BenchPart = () => {
  const { sheet, show } = useSheet();
  const library = useLibrary();
  return (
    <>
      <Show when={workedLines(sheet, library()).length > 0}>
        <section class="print-bench">
          <h2>At the press and the bench</h2>
          <ul>
            <For each={workedLines(sheet, library())}>
              {(row) => (
                <li>
                  <b>{row.number}</b> {row.title}
                  <For each={row.outputs}>
                    {({ output, label, figure }) => (
                      <span class="known">
                        {label} <b>{show.output(row.cell, output).value(figure)}</b>{' '}
                        {show.output(row.cell, output).beside(figure, false)}
                      </span>
                    )}
                  </For>
                </li>
              )}
            </For>
          </ul>
        </section>
      </Show>
      <Show when={readingLines(sheet).length > 0}>
        <section class="print-bench">
          <h2>Read off the parts</h2>
          <ul>
            <For each={readingLines(sheet)}>
              {(row) => (
                <li>
                  <b>{row.number}</b> {row.title}: <b>{row.readings}</b>
                  {row.gauge ? `, with ${row.gauge}` : ', no gauge named'}
                </li>
              )}
            </For>
          </ul>
        </section>
      </Show>
      <Show when={thingLines(sheet, library()).length > 0}>
        <section class="print-bench">
          <h2>Metals and gauges</h2>
          <ul>
            <For each={thingLines(sheet, library())}>
              {(row) => (
                <li>
                  <b>{row.number}</b> {row.title}: <b>{row.is}</b>
                </li>
              )}
            </For>
          </ul>
        </section>
      </Show>
    </>
  );
};
