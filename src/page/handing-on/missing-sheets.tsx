import { createMemo, createSignal, For, onCleanup, Show } from 'solid-js';
import type { Shop } from '../../document/storage/shop.ts';

const NAMED = 12;

/** What the browser has dropped of the shop: named, wherever the user is, until it has been read. */
export const MissingSheets = (props: { shop: Shop }) => {
  const [seen, setSeen] = createSignal(0);
  onCleanup(props.shop.observeList(() => setSeen((n) => n + 1)));
  const missing = createMemo(() => {
    seen();
    return props.shop.missing();
  });
  const dropped = () => {
    seen();
    return props.shop.dropped();
  };
  const time = (at: number) => new Date(at).toLocaleTimeString(undefined, { timeStyle: 'short' });
  return (
    <Show when={missing().length > 0 || dropped() !== undefined}>
      <div class="trouble missing" role="alert">
        <div>
          <p>
            <Show
              when={dropped()}
              fallback="The browser has dropped part of what it kept for this page. Nobody deleted it here."
            >
              {(at) =>
                `At ${time(at())} the browser dropped what it kept for this page. The sheets that are open have been stored again; their earlier states, and settings of the shop, may be gone.`
              }
            </Show>
          </p>
          <Show when={missing().length > 0}>
            <p>
              Not here any more: {missing().length} {missing().length === 1 ? 'sheet' : 'sheets'}. Where
              another tab has one open, go there and save it; else restore from the last file of the whole
              shop.
            </p>
            <ul>
              <For each={missing().slice(0, NAMED)}>
                {({ title }) => <li>{title || 'a sheet without a title'}</li>}
              </For>
              <Show when={missing().length > NAMED}>
                <li>and {missing().length - NAMED} more</li>
              </Show>
            </ul>
          </Show>
        </div>
        <button type="button" onClick={() => props.shop.forgetMissing()}>
          I have read it
        </button>
      </div>
    </Show>
  );
};
