import { createMemo, For, Show } from 'solid-js';
import { CheckSign } from '../kit/check-mark.tsx';
import { COUNTED, type Standing as Kind, ORDER } from '../kit/check-words.ts';
import { useSheet } from '../state/context.ts';
import { askedOf, toNextEntry } from './next-entry.tsx';

/** The verdict of the sheet as a whole, and the way to the first check that does not hold. */
export const Standing = () => {
  const context = useSheet();
  const { sheet, goTo } = context;
  const counts = () => sheet.counts();
  const asked = createMemo(() => askedOf(context));
  const must = () => asked().must.length;
  const may = () => asked().may.length;
  /** While entries are missing, what waits is waiting for them: nothing to look into yet. */
  const first = () =>
    must() > 0 && counts().of.misses + counts().of.doubt === 0 ? undefined : counts().first;
  const kinds = () =>
    ORDER.filter((kind): kind is Exclude<Kind, 'none'> => kind !== 'none' && counts().of[kind] > 0);
  return (
    <section class="strip gap-x-4 gap-y-2 min-h-target py-2 lined-b" aria-label="How the checks stand">
      <Show when={sheet.state.rev > 0} fallback={<span class="caption">Working it out …</span>}>
        <Show when={must() + may() > 0}>
          <span>
            <Show
              when={must() > 0}
              fallback={
                <>
                  <strong class="text-figure">{may()}</strong> more to enter where known
                </>
              }
            >
              <strong class="text-figure">{must()}</strong> {must() === 1 ? 'entry' : 'entries'} to make
              <Show when={may() > 0}>
                <small class="caption">, {may()} more where known</small>
              </Show>
            </Show>
          </span>
          {/* While some must be made, the way to them stands at the foot of the window. */}
          <Show when={must() === 0}>
            <button type="button" onClick={() => toNextEntry(context)}>
              Go to the next entry
            </button>
          </Show>
        </Show>
        <Show
          when={counts().total > 0}
          fallback={<span class="caption">No limits to check against yet.</span>}
        >
          <For each={kinds()}>
            {(kind) => (
              <span class={`verdict ${kind}`}>
                <span class="tone">
                  <CheckSign state={COUNTED[kind].sign} />
                </span>
                <span class="tone">
                  <strong class="text-figure">{counts().of[kind]}</strong>{' '}
                  {counts().of[kind] === 1 ? COUNTED[kind].one : COUNTED[kind].many}
                </span>
              </span>
            )}
          </For>
          <Show when={first()}>
            {(check) => (
              <button type="button" onClick={() => goTo(check().cell, check().output)}>
                Go to the first that does not hold
              </button>
            )}
          </Show>
        </Show>
      </Show>
    </section>
  );
};
