import { For } from 'solid-js';

export const TextList = (props: { texts: readonly string[] }) => (
  <ul class="dash-list [&>li]:max-w-60rem">
    <For each={props.texts}>{(text) => <li>{text}</li>}</For>
  </ul>
);
