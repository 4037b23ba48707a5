import { createResource, For, Show } from 'solid-js';
import { dropEquipment, type Equipment, equipmentOf } from '../../document/sharing/own-equipment.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { Said } from '../handing-on/said.tsx';

const words = ({ inputs }: Equipment): string => Object.values(inputs).join(', ');

/** Gauges and presses that the shop keeps: what they are filled in with, and the way to keep one no more. */
export default function OwnList(props: { shop: Shop }) {
  const [kept, { mutate }] = createResource(() => equipmentOf(props.shop), { initialValue: [] });
  return (
    <Show when={kept().length > 0}>
      <section class="grid gap-2">
        <h2 class="heading">This shop’s own equipment</h2>
        <p class="caption">Filled in where a template asks for such a one when a job is begun from it.</p>
        <ul>
          <For each={kept()}>
            {(one) => (
              <li class="along py-1 lined-t-rule">
                <strong>
                  <Said text={one.label} />
                </strong>
                <span class="caption">
                  <Said text={words(one)} />
                </span>
                <button type="button" onClick={() => void dropEquipment(props.shop, one).then(mutate)}>
                  Keep it no more
                </button>
              </li>
            )}
          </For>
        </ul>
      </section>
    </Show>
  );
}
