import { For, Show } from 'solid-js';
import { type CheckState, isPartState, isState } from '../../../shared/checks/states.ts';
import type { ListRow } from '../../document/storage/row.ts';
import { CheckSign } from '../kit/check-mark.tsx';
import { COUNTED, ORDER, standingOf, verdictClass } from '../kit/check-words.ts';

/** How a job's checks stood when it was last worked out. */
export const JobChecks = (props: { row: ListRow }) => {
  const counts = () => {
    const states = Object.entries(props.row.checks?.counts ?? {}).flatMap(
      ([state, count]): Array<[CheckState, number]> => (isState(state) ? [[state, count]] : []),
    );
    return ORDER.flatMap((standing) => {
      const of = states.filter(([state]) => standingOf(state) === standing);
      const n = of.reduce((sum, [, count]) => sum + count, 0);
      if (standing === 'none' || n === 0) return [];
      // Nothing is called proven while some of it is only planned.
      const part = of.length === 1 && isPartState(of[0]![0]) ? of[0]![0] : undefined;
      const { one, many, sign } = COUNTED[standing];
      return [{ standing, n, state: part ?? sign, word: part ?? (n === 1 ? one : many) }];
    });
  };
  const head = () => {
    const { standing } = props.row.checks ?? {};
    return standing && isState(standing.state) ? standing : undefined;
  };
  const waits = () => counts().some((count) => count.standing === 'waiting');
  return (
    <Show when={!head()} fallback={<HeadLine {...head()!} waits={waits()} />}>
      <span class="job-checks flex flex-wrap gap-x-2 gap-y-1" classList={{ waits: waits() }}>
        <Show when={counts().length > 0} fallback={<span class="caption">no checks yet</span>}>
          <For each={counts()}>
            {(count) => (
              <span class={`verdict ${count.standing}`}>
                <span class="tone">
                  <CheckSign state={count.state} />
                </span>
                <span>
                  {count.n} {count.word}
                </span>
              </span>
            )}
          </For>
        </Show>
      </span>
    </Show>
  );
};

/** What the head of the sheet said. */
const HeadLine = (props: { state: CheckState; words: string; waits: boolean }) => (
  <span class="job-checks" classList={{ waits: props.waits, [verdictClass(props.state)]: true }}>
    <span class="tone">
      <CheckSign state={props.state} />
    </span>
    <span class="clamp-3">{props.words}</span>
  </span>
);
