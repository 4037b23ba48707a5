import { createMemo, createResource, For, Show } from 'solid-js';
import { dropEquipment, type Equipment, equipmentOf } from '../../document/sharing/own-equipment.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { Said } from '../handing-on/said.tsx';
import { writtenOut } from '../kit/decimal-mark.ts';
import { inputTextWords, inputWords } from '../state/input-said.ts';
import { useLibrary } from '../state/library.ts';

/** Gauges, presses and metals that the shop keeps: what they are, and the way to keep one no more. */
export default function OwnList(props: { shop: Shop }) {
  const [kept, { mutate }] = createResource(() => equipmentOf(props.shop), { initialValue: [] });
  const library = useLibrary();
  const words = ({ kind, inputs }: Equipment): string =>
    Object.entries(inputs)
      .map(([name, text]) => {
        const said = inputTextWords(library(), kind, name, text);
        // A choice says by itself what it is.
        return said === text ? `${inputWords(library(), kind, name)} ${writtenOut(text)}` : said;
      })
      .join('; ');
  const groups = createMemo(() => {
    const isOffered = ({ kind, inputs }: Equipment) =>
      library()
        ?.kinds.get(kind)
        ?.inputs.some(({ name, ofShop }) => ofShop === 'offered' && inputs[name] !== undefined) === true;
    return [
      {
        title: 'This shop’s own equipment',
        about: 'Filled in where a template asks for such a one when a job is begun from it.',
        kept: kept().filter((one) => !isOffered(one)),
      },
      {
        title: 'This shop’s own metals',
        about: 'Offered first wherever a metal is chosen.',
        kept: kept().filter(isOffered),
      },
    ].filter((group) => group.kept.length > 0);
  });
  return (
    <For each={groups()}>
      {(group) => (
        <section class="grid gap-2">
          <h2 class="heading">{group.title}</h2>
          <p class="caption">{group.about}</p>
          <ul>
            <For each={group.kept}>
              {(one) => (
                <li class="along py-1 lined-t-rule">
                  <Show when={one.label}>
                    <strong>
                      <Said text={one.label} />
                    </strong>
                  </Show>
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
      )}
    </For>
  );
}
