import { For, Show } from 'solid-js';
import { fieldWords, sheetFieldWords } from '../../../shared/sheet/field-words.ts';
import { writtenOut } from '../kit/decimal-mark.ts';
import type { Conflict } from '../state/conflicts.ts';
import { useSheet } from '../state/context.ts';

const SHOWN = 20;

/** What was entered here and does not stand, because somebody else wrote there meanwhile: each to be chosen. */
export const ConflictList = () => {
  const { sheet } = useSheet();
  const { conflicts } = sheet;
  const words = ({ cell, field }: Conflict) =>
    cell === undefined ? sheetFieldWords(field) : `${sheet.titleOf(cell)}, ${fieldWords(field)}`;
  const text = (value: string) => (value === '' ? 'nothing' : `“${writtenOut(value)}”`);
  return (
    <Show when={conflicts.list().length > 0}>
      <div class="trouble conflicts" role="alert">
        <div>
          <p>Changed in two places at once. Of two entries one does not stand:</p>
          <ul>
            <For each={conflicts.list().slice(0, SHOWN)}>
              {(conflict) => (
                <li>
                  {words(conflict)}: {conflict.another ? 'another' : 'you'} entered {text(conflict.mine)};{' '}
                  {conflict.theirs === undefined
                    ? 'the line has been deleted meanwhile. '
                    : conflict.another
                      ? `${text(conflict.theirs)} stands. `
                      : `another entered ${text(conflict.theirs)}. `}
                  <button
                    type="button"
                    onClick={() => {
                      conflicts.close(conflict);
                      conflict.enter();
                    }}
                  >
                    {conflict.theirs === undefined
                      ? 'Bring the line back with mine'
                      : conflict.another
                        ? 'Enter theirs'
                        : 'Enter mine'}
                  </button>{' '}
                  <button type="button" onClick={() => conflicts.close(conflict)}>
                    {conflict.theirs === undefined
                      ? 'Leave it deleted'
                      : conflict.another
                        ? 'Leave it'
                        : 'Leave theirs'}
                  </button>
                </li>
              )}
            </For>
            <Show when={conflicts.list().length > SHOWN}>
              <li>and {conflicts.list().length - SHOWN} more, behind these</li>
            </Show>
          </ul>
        </div>
        <Show when={conflicts.list().length > 1}>
          <button type="button" onClick={conflicts.closeAll}>
            Leave all as it is
          </button>
        </Show>
      </div>
    </Show>
  );
};
