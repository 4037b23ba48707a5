import { For, Show } from 'solid-js';
import { writtenOut } from '../preferences/decimal-mark.ts';
import { useSheet } from '../sheet/context.ts';
import { cellOfRow } from '../state/cursor.ts';
import { OFFER_KEY, RIGHT_KEY } from './keys.ts';
import './slips.css';

/** The open questions of a line, quietly below its entry; on the line under the cursor with the keys that answer the first. */
export const SlipRemarks = (props: { cell: string }) => {
  const { sheet, cursor } = useSheet();
  const here = () => {
    const place = cursor.place();
    return place !== undefined && cellOfRow(place.row) === props.cell;
  };
  return (
    <For each={sheet.line(props.cell)?.result?.slips}>
      {(slip, i) => (
        <span class="remark-note">
          {slip.message}
          <Show when={here() && i() === 0}>
            <span class="slip-keys">
              <Show when={slip.offer}>
                {(offer) => (
                  <span>
                    <kbd>{OFFER_KEY}</kbd> take {writtenOut(offer())}
                  </span>
                )}
              </Show>
              <span>
                <kbd>{RIGHT_KEY}</kbd> it is right
              </span>
            </span>
          </Show>
        </span>
      )}
    </For>
  );
};
