import { createResource, createSignal, For, Show } from 'solid-js';
import type { Problem } from '../../../shared/problem.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { askToKeep, space } from '../../document/storage/space.ts';
import { giveFile } from '../handing-on/give-file.ts';
import { JsonPicker } from '../handing-on/json-picker.tsx';
import { chosenPreferences, preferAlso } from '../kit/preferences.ts';
import { today } from '../kit/today.ts';

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0)} MB`;

/** Name of the shop's setting that carries them in a file. */
const PREFERENCES = 'preferences';

/** Everything there is in one file and back, and how the browser keeps it. */
export default function WholeShop(props: { shop: Shop }) {
  const [done, setDone] = createSignal<{ n: number; of: number; what: string }>();
  const [said, setSaid] = createSignal<string[]>([]);
  const [room, { refetch }] = createResource(space, { initialValue: undefined });
  let picker!: HTMLInputElement;
  const follow = (what: string) => (n: number, of: number) => setDone({ n, of, what });
  const problems = (list: readonly Problem[]) =>
    list.map(({ origin, message }) => (origin ? `${origin}: ${message}` : message));
  const run = async (work: () => Promise<string[]>) => {
    setSaid([]);
    try {
      setSaid(await work());
    } catch (error) {
      setSaid([`It was not done: ${String(error)}`]);
    }
    setDone(undefined);
  };
  const save = () =>
    run(async () => {
      // Kept by the browser beside the sheets: the file has them too, so that a new machine works as the old one did.
      await props.shop.setSetting(PREFERENCES, chosenPreferences());
      const { file, problems: left } = await props.shop.backup(follow('Saved'));
      giveFile(file, `fitwright-shop-${today()}.json`);
      return [`${props.shop.list().length - left.length} sheets are in the file.`, ...problems(left)];
    });
  const restore = (file: File | undefined) =>
    file &&
    run(async () => {
      const result = await props.shop.restore(file, follow('Taken in'));
      if (!('added' in result)) return [result.message];
      preferAlso(await props.shop.setting(PREFERENCES));
      const { added, same, copies } = result;
      return [
        `Added: ${added.length}. Here already: ${same.length}. Beside a sheet that says something else: ${copies.length}.`,
        ...problems(result.problems),
      ];
    });
  return (
    <section class="grid gap-2">
      <h2 class="heading mb-3">The whole shop</h2>
      <p>
        Jobs and templates are kept in this browser, on this machine, and nowhere else unless they are shared.
        A file of all of them, put somewhere safe, is the way back when the machine is lost.
      </p>
      <div class="buttons">
        <button type="button" disabled={done() !== undefined} onClick={() => void save()}>
          Save the whole shop to a file
        </button>
        <button type="button" disabled={done() !== undefined} onClick={() => picker.click()}>
          Restore from a file
        </button>
        <JsonPicker
          ref={picker}
          label="Restore the whole shop from a file"
          onFiles={(files) => void restore(files?.[0])}
        />
      </div>
      <Show when={done()}>
        {(progress) => (
          <label class="grid gap-1 max-w-24rem">
            {progress().what} {progress().n} of {progress().of}
            <progress class="w-full accent-pencil" value={progress().n} max={Math.max(progress().of, 1)} />
          </label>
        )}
      </Show>
      <div role="status">
        <For each={said()}>{(text) => <p>{text}</p>}</For>
      </div>
      <Show when={room.latest}>
        {(found) => (
          <p class="caption">
            {megabytes(found().used)} of {megabytes(found().quota)} used.{' '}
            <Show
              when={found().kept}
              fallback={
                <>
                  The browser may clear it when the disk gets full.{' '}
                  <button type="button" onClick={() => void askToKeep().then(() => refetch())}>
                    Ask the browser to keep it
                  </button>
                </>
              }
            >
              The browser has promised to keep it.
            </Show>
          </p>
        )}
      </Show>
    </section>
  );
}
