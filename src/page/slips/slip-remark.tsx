import { For, type JSX, Show } from 'solid-js';
import { writtenOut } from '../preferences/decimal-mark.ts';
import { sayMessage } from '../preferences/say-message.ts';
import { useSheet } from '../sheet/context.ts';
import { cellOfRow } from '../state/cursor.ts';
import { sayRight, takeOffer } from './answer.ts';
import { OFFER_KEY, RIGHT_KEY } from './keys.ts';
import './slips.css';

/** What a cell says about itself. */
const Remarks = (props: { cell: string }) => {
  const { sheet } = useSheet();
  return (
    <For each={sheet.line(props.cell)?.outline?.remarks}>
      {(remark) => (
        <span class="remark-note" classList={{ error: remark.grade === 'error' }}>
          {sayMessage(remark.message)}
        </span>
      )}
    </For>
  );
};

/** What a line says about itself and the questions it asks, quietly below its entry. */
export const SlipRemarks = (props: { cell: string }) => (
  <>
    <Questions cell={props.cell} />
    <Remarks cell={props.cell} />
  </>
);

/** The open questions; on the line under the cursor with what answers the first, by press or key. */
const Questions = (props: { cell: string }) => {
  const { sheet, cursor } = useSheet();
  const here = () => {
    const place = cursor.place();
    return place !== undefined && cellOfRow(place.row) === props.cell;
  };
  return (
    <For each={sheet.line(props.cell)?.outline?.slips}>
      {(slip, i) => (
        <span class="remark-note">
          {sayMessage(slip.message)}
          <Show when={here() && i() === 0}>
            <span class="slip-keys">
              <Show when={slip.offer}>
                {(offer) => (
                  <Answer by={OFFER_KEY} onTake={() => takeOffer(sheet, props.cell, slip)}>
                    take {writtenOut(offer())}
                  </Answer>
                )}
              </Show>
              <Answer by={RIGHT_KEY} onTake={() => sayRight(sheet, props.cell, slip)}>
                it is right
              </Answer>
            </span>
          </Show>
        </span>
      )}
    </For>
  );
};

const Answer = (props: { by: string; onTake: () => void; children: JSX.Element }) => (
  <button
    type="button"
    tabindex={-1}
    // The cell keeps the focus: the answer takes the button away.
    onPointerDown={(event) => event.preventDefault()}
    onClick={() => props.onTake()}
  >
    <kbd>{props.by}</kbd> {props.children}
  </button>
);
