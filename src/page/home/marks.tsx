import { For, Show } from 'solid-js';
import { say } from '../kit/words.ts';

const SHOWN = 24;

/** The words sheets are marked with, to narrow the list to those that bear all the chosen ones. */
export const Marks = (props: {
  all: readonly string[];
  chosen: readonly string[];
  onChoose: (chosen: readonly string[]) => void;
}) => {
  const shown = () => [
    ...props.chosen.filter((tag) => !props.all.slice(0, SHOWN).includes(tag)),
    ...props.all.slice(0, SHOWN),
  ];
  const turn = (tag: string) =>
    props.onChoose(
      props.chosen.includes(tag) ? props.chosen.filter((one) => one !== tag) : [...props.chosen, tag],
    );
  return (
    <Show when={props.all.length > 0}>
      <fieldset class="mark-row buttons gap-x-2 gap-y-1 mb-2 phone:(flex-nowrap overflow-x-auto)">
        <legend class="caption float-left mr-2 leading-target">Keywords</legend>
        <For each={shown()}>
          {(tag) => (
            <button
              type="button"
              class="phone:flex-none"
              aria-pressed={props.chosen.includes(tag)}
              onClick={() => turn(tag)}
            >
              {say(tag)}
            </button>
          )}
        </For>
      </fieldset>
    </Show>
  );
};
