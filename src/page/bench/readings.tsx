import { createEffect, For, on } from 'solid-js';
import { writtenOut } from '../kit/decimal-mark.ts';
import { readingAt, type Slot, sameSlot } from './slots.ts';

export interface ReadingsProps {
  slots: readonly Slot[];
  places: ReadonlyArray<readonly string[]>;
  at: Slot | undefined;
  onChoose: (slot: Slot) => void;
}

/** What has been read, place by place; a press on one takes it again. */
export const Readings = (props: ReadingsProps) => {
  let list!: HTMLOListElement;
  createEffect(
    on([() => props.at, () => props.slots], () =>
      list.querySelector('[aria-pressed="true"]')?.scrollIntoView({ block: 'nearest', inline: 'center' }),
    ),
  );
  return (
    <ol ref={list} class="flex gap-1 overflow-x-auto" aria-label="Readings">
      <For each={props.slots}>
        {(slot) => {
          const text = () => readingAt(props.places, slot);
          const name = `place ${slot.place + 1}, direction ${slot.direction + 1}`;
          return (
            <li classList={{ 'pl-1 lined-l-wide': slot.direction === 0 && slot.place > 0 }}>
              <button
                type="button"
                class="min-w-56px min-h-44px px-2"
                aria-pressed={sameSlot(slot, props.at)}
                aria-label={text() ? `${writtenOut(text())}, ${name}: read again` : `not read yet, ${name}`}
                onClick={() => props.onChoose(slot)}
              >
                {text() ? writtenOut(text()) : '—'}
              </button>
            </li>
          );
        }}
      </For>
    </ol>
  );
};
