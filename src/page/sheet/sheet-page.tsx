import { createResource, Match, onCleanup, Show, Switch } from 'solid-js';
import type { OpenSheet } from '../../document/storage/open-sheet.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { OpenedSheet } from './opened-sheet.tsx';
import { Unopened } from './unopened.tsx';

/** Opens a sheet of the shop and lets go of it with the page. */
export default function SheetPage(props: { shop: Shop; id: string }) {
  const [opened] = createResource(
    () => props.id,
    async (id) => {
      const found = await props.shop.open(id);
      if (gone && 'close' in found) void found.close();
      return found;
    },
  );
  let gone = false;
  onCleanup(() => {
    gone = true;
    const sheet = opened.latest;
    if (sheet && 'close' in sheet) void sheet.close();
  });
  return (
    <Switch fallback={<p class="paper">Opening the sheet …</p>}>
      <Match when={opened.error}>
        <Unopened shop={props.shop} id={props.id} message={String(opened.error)} />
      </Match>
      <Match when={opened()}>
        {(found) => (
          <Show
            when={'document' in found() ? (found() as OpenSheet) : undefined}
            keyed
            fallback={
              <Unopened
                shop={props.shop}
                id={props.id}
                message={'message' in found() ? (found() as { message: string }).message : ''}
              />
            }
          >
            {(sheet) => <OpenedSheet opened={sheet} shop={props.shop} />}
          </Show>
        )}
      </Match>
    </Switch>
  );
}
