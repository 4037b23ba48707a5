import { createResource, createUniqueId, For, Show } from 'solid-js';
import { type Equipment, equipmentOf } from '../../document/sharing/own-equipment.ts';
import { createKept } from '../kit/keep-equal.ts';
import { say } from '../kit/words.ts';
import { useSheet } from '../state/context.ts';
import { useLibrary } from '../state/library.ts';
import { putAbove } from '../state/put-above.ts';
import { useTools } from '../state/tools.ts';
import type { Stop } from './stops.ts';

/** Where a stop keeps the name of its gauge: beside its entry. */
const gaugeField = ({ spot }: Stop): string =>
  spot.field === 'entry' ? 'gauge' : spot.field.replace(/entry$/, 'gauge');

/** Of a choice that puts a gauge on the sheet first: no cell can have such a name. */
const OWN = '+ own ';
const NEW = '+ new ';

/** What a dimension is read with: a gauge of the sheet, or one put on it here, of the shop's own or of a kind. */
export const GaugeOf = (props: { stop: Stop }) => {
  const context = useSheet();
  const { sheet } = context;
  const { shop } = useTools();
  const library = useLibrary();
  const id = createUniqueId();
  const gauges = createKept<Array<{ name: string; title: string }>>(
    () =>
      sheet.state.order.flatMap((cell) => {
        const record = sheet.line(cell)?.record;
        return record?.kind === 'gauge' && record.name
          ? [{ name: record.name, title: sheet.titleOf(cell) }]
          : [];
      }),
    [],
  );
  const known = () => !props.stop.gauge || gauges().some(({ name }) => name === props.stop.gauge);
  const [kept] = createResource(() => equipmentOf(shop).catch((): Equipment[] => []), { initialValue: [] });
  /** The shop's own that are not on the sheet yet, by what they are called. */
  const own = () =>
    kept.latest.filter(
      ({ kind, label }) => kind === 'gauge' && label !== '' && gauges().every(({ title }) => title !== label),
    );
  const kinds = () => {
    const choice = library()
      ?.kinds.get('gauge')
      ?.inputs.find(({ name }) => name === 'gauge')?.choice;
    return (choice && library()?.tables.get(choice)?.rows) || [];
  };
  const name = (gauge: string | undefined) =>
    sheet.document.setField(props.stop.cell, gaugeField(props.stop), gauge);
  const putIn = (label: string, inputs: Readonly<Record<string, string>>) =>
    putAbove(context, props.stop.cell, { kind: 'gauge', label, inputs: { ...inputs } }, name);
  const choose = (value: string) => {
    if (value.startsWith(OWN)) {
      const one = own()[Number(value.slice(OWN.length))];
      if (one) putIn(one.label, one.inputs);
    } else if (value.startsWith(NEW)) {
      const key = value.slice(NEW.length);
      putIn(kinds().find((row) => row.key === key)?.name ?? key, { gauge: key });
    } else name(value || undefined);
  };
  return (
    <div class="flex items-center gap-2">
      <label for={id} class="caption">
        with
      </label>
      <select
        id={id}
        class="min-h-key min-w-0 flex-1"
        value={props.stop.gauge ?? ''}
        onChange={(event) => {
          const { value } = event.currentTarget;
          event.currentTarget.value = props.stop.gauge ?? '';
          choose(value);
        }}
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
        <Show when={own().length > 0}>
          <optgroup label="this shop’s own, to be put on the sheet">
            <For each={own()}>{(one, i) => <option value={OWN + i()}>{say(one.label)}</option>}</For>
          </optgroup>
        </Show>
        <optgroup label="another, to be put on the sheet">
          <For each={kinds()}>{(row) => <option value={NEW + row.key}>{say(row.name)}</option>}</For>
        </optgroup>
      </select>
    </div>
  );
};
