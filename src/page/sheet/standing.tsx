import { For, Show } from 'solid-js';
import type { CheckState } from '../../../shared/check.ts';
import { CheckSign } from '../marks/check-mark.tsx';
import { type Standing as Kind, ORDER } from '../marks/check-words.ts';
import { useSheet } from './context.ts';
import './standing.css';

const WORDS: Record<Exclude<Kind, 'none'>, { one: string; many: string; sign: CheckState }> = {
  misses: { one: 'misses', many: 'miss', sign: 'misses' },
  doubt: { one: 'may miss', many: 'may miss', sign: 'may miss' },
  waiting: { one: 'waits', many: 'wait', sign: 'waiting' },
  edge: { one: 'holds near the edge', many: 'hold near the edge', sign: 'holds, near the edge' },
  holds: { one: 'holds', many: 'hold', sign: 'holds' },
};

/** How the sheet stands as a whole, and the way to the first check that does not hold. */
export const Standing = () => {
  const { sheet, goTo } = useSheet();
  const counts = () => sheet.counts();
  const kinds = () =>
    ORDER.filter((kind): kind is Exclude<Kind, 'none'> => kind !== 'none' && counts().of[kind] > 0);
  return (
    <section class="standing" aria-label="How the checks stand">
      <Show when={sheet.state.rev > 0} fallback={<span class="caption">Working it out …</span>}>
        <Show
          when={counts().total > 0}
          fallback={<span class="caption">No limits to check against yet.</span>}
        >
          <For each={kinds()}>
            {(kind) => (
              <span class={`verdict ${kind}`}>
                <span class="tone">
                  <CheckSign state={WORDS[kind].sign} />
                </span>
                <span class="word tone">
                  <strong>{counts().of[kind]}</strong>{' '}
                  {counts().of[kind] === 1 ? WORDS[kind].one : WORDS[kind].many}
                </span>
              </span>
            )}
          </For>
          <Show when={counts().first}>
            {(first) => (
              <button type="button" onClick={() => goTo(first().cell, first().output)}>
                Go to the first that does not hold
              </button>
            )}
          </Show>
        </Show>
      </Show>
    </section>
  );
};
