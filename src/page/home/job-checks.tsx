import { For, Show } from 'solid-js';
import type { CheckState } from '../../../shared/check.ts';
import type { ListRow } from '../../document/storage/row.ts';
import { CheckSign } from '../marks/check-mark.tsx';
import { ORDER, standingOf } from '../marks/check-words.ts';

/** How a job's checks stood when it was last worked out. */
export const JobChecks = (props: { row: ListRow }) => {
  const counts = () => {
    const states = Object.entries(props.row.checks?.counts ?? {}) as Array<[CheckState, number]>;
    return ORDER.slice(0, 5).flatMap((standing) => {
      const of = states.filter(([state]) => standingOf(state) === standing);
      const n = of.reduce((sum, [, count]) => sum + count, 0);
      return n > 0 ? [{ standing, n, state: of[0]![0] }] : [];
    });
  };
  const waits = () => counts().some((count) => count.standing === 'waiting');
  return (
    <span class="job-checks" classList={{ waits: waits(), sheet: true }}>
      <Show when={counts().length > 0} fallback={<span class="caption">no checks yet</span>}>
        <For each={counts()}>
          {(count) => (
            <span class={`verdict ${count.standing}`}>
              <span class="tone">
                <CheckSign state={count.state} />
              </span>
              <span>
                {count.n} {count.state}
              </span>
            </span>
          )}
        </For>
      </Show>
    </span>
  );
};
