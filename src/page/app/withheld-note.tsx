import { createSignal, For, Show } from 'solid-js';
import { readKept, writeKept } from '../kit/kept.ts';

const KEY = 'withheld';

const WITHHELD = [
  'Without the server the page does not open. One that is open goes on working: closed in the yard, it stays closed until the server is reached again.',
  'The screen may go dark between two readings.',
  'The browser may drop what it keeps here when its disk runs short. What has to last is saved to a file, or shared and at the shop’s server.',
] as const;

/** What the browser holds back from a page that came over plain HTTP from another machine: said once. */
export default function WithheldNote() {
  const [read, setRead] = createSignal(readKept(KEY) === true);
  const close = () => {
    writeKept(KEY, true);
    setRead(true);
  };
  return (
    <Show when={!read()}>
      <aside
        class="withheld max-w-86rem mx-auto mt-3 px-3 py-2 stacked gap-2 lined bg-tint text-small print:hidden"
        aria-label="What this browser holds back"
      >
        <p>
          This page came over plain HTTP from another machine. Everything works but what a browser gives to
          https alone, and whoever is on the same network can read what is sent:
        </p>
        <ul class="[&>li]:(ml-4 [list-style:square])">
          <For each={WITHHELD}>{(text) => <li>{text}</li>}</For>
        </ul>
        <div>
          <button type="button" onClick={close}>
            I have read it
          </button>
        </div>
      </aside>
    </Show>
  );
}
