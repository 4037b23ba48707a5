import { For } from 'solid-js';

export const TextList = (props: { texts: readonly string[] }) => (
  <ul class="texts">
    <For each={props.texts}>{(text) => <li>{text}</li>}</For>
  </ul>
);
