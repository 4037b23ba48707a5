import { For, Show } from 'solid-js';

export interface Care {
  text: string;
  /** Numbers of the lines it stands at. */
  lines: number[];
}

/** Cautions by line number, each said once. */
export const CareList = (props: { list: readonly Care[] }) => (
  <ul class="dash-list">
    <For each={props.list}>
      {(one) => (
        <li>
          <Show when={one.lines.length > 0}>
            <b>{one.lines.join(', ')}</b>{' '}
          </Show>
          {one.text}
        </li>
      )}
    </For>
  </ul>
);
