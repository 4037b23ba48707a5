import { For, Show } from 'solid-js';
import { useSheet } from '../state/context.ts';
import type { Stop } from './stops.ts';

/** Where a stop keeps the name of its gauge: beside its entry. */
const gaugeField = ({ spot }: Stop): string =>
  spot.field === 'entry' ? 'gauge' : spot.field.replace(/entry$/, 'gauge');

/** What a dimension is read with: one of the sheet's gauges, named here as well as on the sheet. */
export const GaugeOf = (props: { stop: Stop }) => {
  const { sheet } = useSheet();
  const gauges = () =>
    sheet.state.order.flatMap((id) => {
      const record = sheet.line(id)?.record;
      return record?.kind === 'gauge' && record.name ? [{ name: record.name, title: sheet.titleOf(id) }] : [];
    });
  const known = () => !props.stop.gauge || gauges().some(({ name }) => name === props.stop.gauge);
  return (
    <Show
      when={gauges().length > 0}
      fallback={<p class="caption py-2px">The sheet has no gauge to read with.</p>}
    >
      <label class="flex items-center gap-2">
        <span class="caption">with</span>
        <select
          class="min-h-key min-w-0 flex-1"
          value={props.stop.gauge ?? ''}
          onChange={(event) =>
            sheet.document.setField(
              props.stop.cell,
              gaugeField(props.stop),
              event.currentTarget.value || undefined,
            )
          }
        >
          <option value="">no gauge named</option>
          <Show when={!known()}>
            <option value={props.stop.gauge}>{props.stop.gauge}: not on this sheet</option>
          </Show>
          <For each={gauges()}>
            {(gauge) => (
              <option value={gauge.name} selected={gauge.name === props.stop.gauge}>
                {gauge.title}
              </option>
            )}
          </For>
        </select>
      </label>
    </Show>
  );
};
