import { Show } from 'solid-js';
import type { Slip } from '../../engine/rows/results.ts';
import { writtenOut } from '../kit/decimal-mark.ts';
import { sayMessage } from '../kit/say-message.ts';
import { sayRight, takeOffer, textAsked } from '../state/answer.ts';
import { useSheet } from '../state/context.ts';

/** A question about an entry that reads well but may not be what was meant. Nothing changes until it is answered. */
export const SlipNote = (props: { slip: Slip; cell: string }) => {
  const { sheet } = useSheet();
  const text = () => textAsked(sheet, props.cell, props.slip);
  return (
    <div class="slip pl-3 barred-doubt" role="note">
      <span>{sayMessage(props.slip.message, sheet)}</span>
      <div class="buttons mt-1">
        <Show when={props.slip.offer}>
          {(offer) => (
            <button type="button" onClick={() => takeOffer(sheet, props.cell, props.slip)}>
              take {writtenOut(offer())}
            </button>
          )}
        </Show>
        <button type="button" onClick={() => sayRight(sheet, props.cell, props.slip)}>
          {text() ? `${writtenOut(text())} is right` : 'it is right'}
        </button>
      </div>
    </div>
  );
};
