import { createMemo, For, Show } from 'solid-js';
import { dropEquipment, type Equipment } from '../../document/sharing/own-equipment.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { Said } from '../handing-on/said.tsx';
import { createOwnShared } from '../joined/own-shared.ts';
import { SharedWords, ShareOwn } from '../joined/share-own.tsx';
import { equipmentWords } from '../state/equipment-words.ts';
import { useLibrary } from '../state/library.ts';
import { createOwnKept, ownChanged } from '../state/own-kept.ts';

/** Gauges, presses and metals that the shop keeps: what they are, and the way to keep one no more. */
export default function OwnList(props: { shop: Shop }) {
  const kept = createOwnKept(props.shop);
  const shared = createOwnShared(props.shop);
  const library = useLibrary();
  const groups = createMemo(() => {
    const isOffered = ({ kind, inputs }: Equipment) =>
      library()
        ?.kinds.get(kind)
        ?.inputs.some(({ name, ofShop }) => ofShop === 'offered' && inputs[name] !== undefined) === true;
    return [
      {
        title: 'This shop’s own equipment',
        about: 'Filled in where a template asks for such a one when a job is begun from it.',
        kept: (kept() ?? []).filter((one) => !isOffered(one)),
      },
      {
        title: 'This shop’s own metals',
        about: 'Offered first wherever a metal is chosen.',
        kept: (kept() ?? []).filter(isOffered),
      },
    ].filter((group) => group.kept.length > 0);
  });
  return (
    <>
      <For each={groups()}>
        {(group) => (
          <section class="grid gap-2">
            <h2 class="heading">{group.title}</h2>
            <p class="caption">{group.about}</p>
            <ul>
              <For each={group.kept}>
                {(one) => (
                  <li class="along justify-between gap-3 py-1 lined-t-rule">
                    <span class="wrap-anywhere">
                      <Show when={one.label}>
                        <strong>
                          <Said text={one.label} />
                        </strong>{' '}
                      </Show>
                      <Said text={equipmentWords(library(), one)} />{' '}
                      <Show when={one.from}>
                        {(from) => (
                          <span class="caption">
                            (from <Said text={from()} />){' '}
                          </span>
                        )}
                      </Show>
                      <SharedWords one={one} shared={shared} />
                    </span>
                    <span class="buttons">
                      <ShareOwn one={one} shared={shared} />
                      <button
                        type="button"
                        onClick={() => void dropEquipment(props.shop, one).then(ownChanged)}
                      >
                        Keep it no more
                      </button>
                    </span>
                  </li>
                )}
              </For>
            </ul>
          </section>
        )}
      </For>
      <p role="status" class="empty:hidden">
        {shared.told()}
      </p>
    </>
  );
}
