import { createResource, For, Show } from 'solid-js';
import type { Shop } from '../../document/storage/shop.ts';
import { useSheet } from '../state/context.ts';
import { type CameFrom, cameTo } from './came.ts';
import { saidName } from './said-name.ts';

const when = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });
const SHOWN = 6;

/** From which device what was entered elsewhere came, the last first. */
export const CameList = (props: { shop: Shop; id: string }) => {
  const { sheet } = useSheet();
  const [list] = createResource(() => cameTo(props.shop, props.id), { initialValue: [] });
  const lines = ({ cells }: CameFrom) => {
    const named = cells.filter((id) => sheet.line(id)).map((id) => sheet.titleOf(id));
    const more = named.length - SHOWN;
    const shown = named.slice(0, SHOWN).join(', ');
    return named.length === 0 ? 'lines that are gone' : more > 0 ? `${shown} and ${more} more` : shown;
  };
  return (
    <Show when={list.latest.length > 0}>
      <section class="came stacked gap-1" aria-label="Entered on other devices">
        <h3 class="text-figure">Entered on other devices</h3>
        <ul>
          <For each={list.latest.slice(0, 20)}>
            {(one) => (
              <li>
                <strong>{one.device === undefined ? 'Other devices' : saidName(one.device)}</strong>{' '}
                <span class="caption">{when.format(one.at)}</span> {lines(one)}
              </li>
            )}
          </For>
        </ul>
      </section>
    </Show>
  );
};
