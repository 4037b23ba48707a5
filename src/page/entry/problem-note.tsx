import { For, Show } from 'solid-js';
import type { Problem, Remedy } from '../../../shared/problem.ts';
import { writtenOut } from '../kit/decimal-mark.ts';
import { sayMessage } from '../kit/say-message.ts';
import { useSheet } from '../state/context.ts';
import { useLibrary } from '../state/library.ts';
import { spotOfField } from './input-spot.ts';
import { loadCommit } from './load.ts';
import './problem-note.css';

export interface ProblemNoteProps {
  problem: Problem;
  /** The cell it is shown at. */
  cell: string;
  /** Without the remedies, which the unfolded line offers. */
  brief?: boolean;
}

export const ProblemNote = (props: ProblemNoteProps) => {
  const { goTo, sheet } = useSheet();
  const library = useLibrary();
  const take = (remedy: Remedy) => {
    const spot = spotOfField(sheet, library(), props.cell, props.problem.field ?? 'entry');
    void loadCommit().then(({ takeRemedy }) => takeRemedy(sheet, spot, remedy));
  };
  const elsewhere = () => {
    const id = props.problem.originId;
    return id !== undefined && id !== props.cell && sheet.line(id) ? id : undefined;
  };
  const grade = () =>
    props.problem.kind === 'blank' || (props.problem.kind === 'upstream' && props.brief)
      ? 'waits'
      : props.problem.kind === 'ask'
        ? 'asks'
        : '';
  return (
    <div class={`problem ${grade()}${props.brief ? ' brief' : ''}`}>
      <span>{sayMessage(props.problem.message)}</span>
      <Show when={elsewhere() || (!props.brief && props.problem.choices?.length)}>
        <div class="actions">
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
