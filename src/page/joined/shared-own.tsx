import { createSignal, For, Show } from 'solid-js';
import { revealed } from '../../../shared/sheet/characters.ts';
import type { OnList } from '../../document/joined/shared-list.ts';
import { keepEquipment } from '../../document/sharing/own-equipment.ts';
import { namesake, offeredBy } from '../../document/sharing/shared-equipment.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { createKept } from '../kit/keep-equal.ts';
import { equipmentWords, isOfShop } from '../state/equipment-words.ts';
import { useLibrary } from '../state/library.ts';
import { createOwnKept, ownChanged } from '../state/own-kept.ts';
import { saidName } from './said-name.ts';
import { sharedByWords } from './shared-by.ts';

/** Gauges, presses and metals that other devices share and this one does not keep: kept here by a press, and never by themselves. */
export const SharedOwn = (props: { shop: Shop; equipment: readonly OnList[] }) => {
  const library = useLibrary();
  const kept = createOwnKept(props.shop);
  const [told, setTold] = createSignal('');
  const offered = createKept<OnList[]>(() => {
    const own = kept();
    return own ? offeredBy(props.equipment, own).map((one) => ({ ...one })) : [];
  }, []);
  /** Those that are kept without a question: known here, and no other of that name. */
  const plain = () =>
    offered().filter((one) => isOfShop(library(), one) === true && !namesake(kept() ?? [], one));
  const keep = async (list: readonly OnList[]): Promise<void> => {
    for (const { kind, label, inputs, by } of list)
      await keepEquipment(props.shop, { kind, label, inputs: { ...inputs }, from: by });
    ownChanged();
    setTold(
      list.length === 1
        ? `${saidName(list[0]!.label) || 'It'} is kept here.`
        : `${list.length} of them are kept here.`,
    );
  };
  const press = (list: readonly OnList[]) =>
    void keep(list).catch((error: unknown) => setTold(`It was not kept: ${String(error)}`));
  const other = (one: OnList): string | undefined => {
    const own = namesake(kept() ?? [], one);
    return own && equipmentWords(library(), own);
  };
  return (
    <>
      <Show when={offered().length > 0}>
        <section class="shared-own mt-3 stacked gap-2" aria-label="Gauges, presses and metals not kept here">
          <h3 class="text-figure">Gauges, presses and metals not kept here</h3>
          <p class="caption">
            Nothing of them comes into a job here until it is kept here. What is kept is a copy: nothing that
            another device does changes it.
          </p>
          <ul class="lined-t">
            <For each={offered()}>
              {(one) => (
                <li class="along justify-between gap-3 py-2 lined-b-rule">
                  <span class="wrap-anywhere">
                    <Show when={one.label}>
                      <strong>
                        <bdi>{saidName(one.label)}</bdi>
                      </strong>{' '}
                    </Show>
                    <bdi>{revealed(equipmentWords(library(), one))}</bdi>{' '}
                    <span class="caption">{sharedByWords(one)}</span>
                    <Show when={other(one)}>
                      {(words) => (
                        <span class="caption block">
                          Kept here under the same name, with other figures: <bdi>{revealed(words())}</bdi>.
                          With both, neither is filled in by itself where either could be meant.
                        </span>
                      )}
                    </Show>
                  </span>
                  <Show
                    when={isOfShop(library(), one) !== false}
                    fallback={<span class="caption">none that this page knows</span>}
                  >
                    <button
                      type="button"
                      disabled={isOfShop(library(), one) !== true}
                      onClick={() => press([one])}
                    >
                      {other(one) === undefined ? 'Keep it here' : 'Keep this one too'}
                    </button>
                  </Show>
                </li>
              )}
            </For>
          </ul>
          <Show when={plain().length > 1}>
            <p>
              <button type="button" onClick={() => press(plain())}>
                {plain().length === offered().length
                  ? `Keep all ${plain().length} here`
                  : `Keep ${plain().length} of them here`}
              </button>
            </p>
          </Show>
        </section>
      </Show>
      <p role="status" class="empty:hidden">
        {told()}
      </p>
    </>
  );
};
