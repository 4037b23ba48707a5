import { createResource, createSignal, For, Show } from 'solid-js';
import type { Shop } from '../../document/storage/shop.ts';
import type { Revision } from '../../document/storage/vault.ts';
import { fileOf } from '../handing-on/file-of.ts';
import { addressOfSheet, go } from '../kit/router.ts';

const when = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** Why a sheet does not open, and the last of its states that can still be read. */
export const Unopened = (props: { shop: Shop; id: string; message: string }) => {
  const [kept] = createResource(
    async () => (await props.shop.revisions(props.id)).filter((one) => fileOf(one) !== undefined).reverse(),
    { initialValue: [] },
  );
  const [trouble, setTrouble] = createSignal('');
  const open = async (revision: Revision) => {
    const file = fileOf(revision);
    if (file) go(addressOfSheet(await props.shop.create(file)));
  };
  return (
    <main class="paper">
      <h1>The sheet does not open</h1>
      <p>{props.message}</p>
      <Show when={!kept.error && kept.latest.length > 0}>
        <h2>States of it that were kept</h2>
        <ul>
          <For each={kept.latest}>
            {(revision) => (
              <li>
                {when.format(revision.time)} {revision.label}{' '}
                <button
                  type="button"
                  onClick={() => void open(revision).catch((error: unknown) => setTrouble(String(error)))}
                >
                  Open it as a new sheet
                </button>
              </li>
            )}
          </For>
        </ul>
      </Show>
      <p role="alert">{trouble()}</p>
      <p>
        <a href="#/">All jobs</a>
      </p>
    </main>
  );
};
