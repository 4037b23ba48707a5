import { Show } from 'solid-js';
import { say } from '../kit/words.ts';

/** What the author says to a line, under its label: while it is to be filled in. Unfolded, the note is below. */
export const LineNote = (props: { note: string | undefined; shown: boolean }) => (
  <Show when={props.shown && props.note}>{(note) => <span class="line-note">{say(note())}</span>}</Show>
);
