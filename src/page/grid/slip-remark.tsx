import { For, type JSX, Show } from 'solid-js';
import type { Slip } from '../../engine/rows/results.ts';
import { writtenOut } from '../kit/decimal-mark.ts';
import { sayMessage } from '../kit/say-message.ts';
import { sayRight, takeOffer, textAsked } from '../state/answer.ts';
import { useSheet } from '../state/context.ts';
import { OFFER_KEY, RIGHT_KEY } from '../state/keys.ts';
import { cellOfRow } from '../state/row-key.ts';

/** What a cell says about itself. */
const Remarks = (props: { cell: string }) => {
  const { sheet } = useSheet();
  return (
    <For each={sheet.line(props.cell)?.shape?.remarks}>
      {(remark) => (
        <span
          class="remark-note block pl-2 text-small"
          classList={{
            'barred-misses': remark.grade === 'error',
            'barred-doubt': remark.grade !== 'error',
          }}
        >
          {sayMessage(remark.message, sheet)}
        </span>
      )}
    </For>
  );
};

/** That somebody else types there, on another device. */
const Elsewhere = (props: { cell: string }) => {
  const { sheet } = useSheet();
  return (
    <Show when={sheet.elsewhere.of(props.cell)}>
      {(words) => <span class="elsewhere block pl-2 text-small barred-moved">{words()}</span>}
    </Show>
  );
};

/** What a line says about itself and the questions it asks, quietly below its entry. */
export const SlipRemarks = (props: { cell: string }) => (
  <>
    <Elsewhere cell={props.cell} />
    <Questions cell={props.cell} />
    <Remarks cell={props.cell} />
  </>
);

/** The open questions; on the line under the cursor with what answers them by a press, the first also by a key. */
const Questions = (props: { cell: string }) => {
  const { sheet, cursor } = useSheet();
  const here = () => {
    const place = cursor.place();
    return place !== undefined && cellOfRow(place.row) === props.cell;
  };
  /** Which text is meant, where it does not stand just above. */
  const meant = (slip: Slip) =>
    (slip.field !== 'entry' && writtenOut(textAsked(sheet, props.cell, slip))) || 'it';
  return (
    <For each={sheet.line(props.cell)?.shape?.slips}>
      {(slip, i) => (
        <span class="remark-note block pl-2 barred-doubt text-small">
          {sayMessage(slip.message, sheet)}
          <Show when={here()}>
            <span class="flex flex-wrap gap-x-2 gap-y-1 pt-1 print:hidden">
              <Show when={slip.offer}>
                {(offer) => (
                  <Answer by={i() === 0 && OFFER_KEY} onTake={() => takeOffer(sheet, props.cell, slip)}>
                    take {writtenOut(offer())}
                  </Answer>
                )}
              </Show>
              <Answer by={i() === 0 && RIGHT_KEY} onTake={() => sayRight(sheet, props.cell, slip)}>
                {meant(slip)} is right
              </Answer>
            </span>
          </Show>
        </span>
      )}
    </For>
  );
};

const Answer = (props: { by: string | false; onTake: () => void; children: JSX.Element }) => (
  <button
    type="button"
    class="px-2 min-h-28px text-left touch:min-h-target"
    tabindex={-1}
    // The cell keeps the focus: the answer takes the button away.
    onPointerDown={(event) => event.preventDefault()}
    onClick={() => props.onTake()}
  >
    <Show when={props.by}>
      <kbd class="[font:inherit] mr-1 text-soft touch:hidden">{props.by}</kbd>{' '}
    </Show>
    {props.children}
  </button>
);
