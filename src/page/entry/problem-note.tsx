import { For, Show } from 'solid-js';
import type { Problem, Remedy } from '../../../shared/problem.ts';
import { writtenOut } from '../kit/decimal-mark.ts';
import { prefer } from '../kit/preferences.ts';
import { sayMessage } from '../kit/say-message.ts';
import { say } from '../kit/words.ts';
import { useSheet } from '../state/context.ts';
import { useLibrary } from '../state/library.ts';
import { spotOfField } from './input-spot.ts';
import { loadCommit } from './load.ts';

/** The colour at its side, by what is to be done about it. */
const BAR = { stops: 'barred-misses', asks: 'barred-doubt', waits: 'barred-soft' } as const;

export interface ProblemNoteProps {
  problem: Problem;
  /** The cell it is shown at. */
  cell: string;
  /** Without the remedies, which the unfolded line offers. */
  brief?: boolean;
}

export const ProblemNote = (props: ProblemNoteProps) => {
  const { goTo, sheet, notices } = useSheet();
  const library = useLibrary();
  const take = (remedy: Remedy) => {
    const spot = spotOfField(sheet, library(), props.cell, props.problem.field ?? 'entry');
    void loadCommit().then(({ takeRemedy, saysComma }) => {
      const comma = saysComma(sheet, spot, remedy);
      takeRemedy(sheet, spot, remedy);
      if (!comma) return;
      prefer('decimal', ',');
      notices.say(
        'From now on a comma is read and written as the decimal mark. The preferences change that.',
      );
    });
  };
  const elsewhere = () => {
    const id = props.problem.originId;
    return id !== undefined && id !== props.cell && sheet.line(id) ? id : undefined;
  };
  /** Nobody is led to what is set aside by the next entry. */
  const instead = () => {
    const record = elsewhere() && sheet.line(elsewhere()!)?.record;
    return record && sheet.asideOf(record);
  };
  const grade = () =>
    props.problem.kind === 'blank' || (props.problem.kind === 'upstream' && props.brief)
      ? 'waits'
      : props.problem.kind === 'ask'
        ? 'asks'
        : 'stops';
  return (
    <div class={`problem ${BAR[grade()]} ${props.brief ? 'brief pl-2 text-small' : 'pl-3 text-plain'}`}>
      <span>
        {/* Where a name is what went wrong, the name is what is to be typed. */}
        {sayMessage(props.problem.message, props.problem.kind === 'unknown-name' ? undefined : sheet)}
        <Show when={instead()}> It is set aside: {say(instead()!)} is taken.</Show>
      </span>
      <Show when={elsewhere() || (!props.brief && props.problem.choices?.length)}>
        <div class="buttons mt-1">
          <Show when={elsewhere()}>
            {(id) => (
              <button type="button" class="go" onClick={() => goTo(id())}>
                go to {sheet.titleOf(id())}
              </button>
            )}
          </Show>
          <Show when={!props.brief}>
            <For each={props.problem.choices}>
              {(remedy) => (
                <button type="button" onClick={() => take(remedy)}>
                  {writtenOut(remedy.label)}
                </button>
              )}
            </For>
          </Show>
        </div>
      </Show>
    </div>
  );
};
