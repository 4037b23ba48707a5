import { createResource, createSignal, For, Show } from 'solid-js';
import type { Shop } from '../../document/storage/shop.ts';
import { MakeKey } from './make-key.tsx';
import { endKey, livingKeys } from './own-keys.ts';
import { saidName } from './said-name.ts';

const when = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** Who gets in at the shop's server, how to let somebody in, and how to end it. */
export default function KeyList(props: { shop: Shop; by: string; sheet?: string }) {
  const [told, setTold] = createSignal('');
  const [keys, { refetch }] = createResource(async () => {
    try {
      const all = await livingKeys(props.by);
      return all.filter(({ sheet }) => props.sheet === undefined || sheet === props.sheet);
    } catch (error) {
      setTold(error instanceof Error ? error.message : String(error));
      return undefined;
    }
  });
  const end = async (id: string, label: string) => {
    try {
      await endKey(props.by, id);
      setTold(`The link for ${label} has ended: whoever came with it is shut out, and keeps what is there.`);
    } catch (error) {
      setTold(error instanceof Error ? error.message : String(error));
    }
    await refetch();
  };
  const opens = (sheet: string | undefined) => {
    if (sheet === undefined) return 'everything that is shared';
    const title = props.shop.row(sheet)?.title.title;
    return title ? `only “${saidName(title)}”` : 'one sheet';
  };
  return (
    <div class="key-list stacked gap-3">
      <p role="status" class="empty:hidden">
        {told()}
      </p>
      <Show when={keys.latest}>
        {(list) => (
          <>
            <ul class="lined-t">
              <For
                each={list()}
                fallback={<li class="caption p-2 lined-b-rule">Nobody has a link to this sheet alone.</li>}
              >
                {({ id, label, sheet, readOnly, made, lastUsed }) => (
                  <li class="along justify-between gap-3 py-2 lined-b-rule">
                    <span class="wrap-anywhere">
                      <strong>{saidName(label)}</strong>{' '}
                      <span class="caption">
                        {readOnly ? 'reads' : 'writes'} {opens(sheet)}, made {when.format(made)},{' '}
                        {lastUsed === undefined ? 'not used yet' : `last used ${when.format(lastUsed)}`}
                      </span>
                    </span>
                    <button type="button" onClick={() => void end(id, label)}>
                      End it
                    </button>
                  </li>
                )}
              </For>
            </ul>
            <MakeKey
              by={props.by}
              {...(props.sheet !== undefined && { sheet: props.sheet })}
              onMade={() => void refetch()}
            />
          </>
        )}
      </Show>
    </div>
  );
}
