import { createSignal, onCleanup, onMount, Show, untrack } from 'solid-js';
import { afterPointer } from '../kit/pointer.ts';
import { asPageGoes, putTypedAside } from '../kit/typed-aside.ts';
import { useSheet } from '../state/context.ts';
import { commitTyped, type Typed } from './commit-typed.ts';
import { loadCommit, loadEditor } from './load.ts';
import type { EditorHandle } from './mount.ts';
import { sheetWords } from './sheet-words.ts';
import type { EntrySpot } from './spot.ts';

export interface EntryEditorProps {
  spot: EntrySpot;
  /** What it opens with. */
  text: string;
  /** What stands in the field, as it changes. */
  stands: string;
  label: string;
  /** It answers a question of the page and is no text of the sheet. */
  isAnswer?: boolean;
  /** Enter (`byKey`), or leaving the field. */
  onCommit: (typed: Omit<Typed, 'leave'>) => void;
  /** Escape. */
  onLeave: () => void;
}

/**
 * Types one entry. A plain field stands in until the editor's chunk is there and hands over what was typed meanwhile,
 * so that the first key is never lost.
 */
export const EntryEditor = (props: EntryEditorProps) => {
  const { sheet } = useSheet();
  const [ready, setReady] = createSignal(false);
  const [said, setSaid] = createSignal<string>();
  const [argument, setArgument] = createSignal<string>();
  let host!: HTMLDivElement;
  let input: HTMLInputElement | undefined;
  let handle: EditorHandle | undefined;
  let done = false;
  const openedOn = untrack(() => props.stands);
  const spot = untrack(() => props.spot);

  const isGone = () => sheet.document.cell(spot.cell) === undefined;
  const commit = (text: string, byKey = false) => {
    if (done) return;
    done = true;
    const typed = text.trim();
    // Entered anew as it stands, what was in doubt is read once more: the decimal mark may have been set since.
    const doubted = byKey && sheet.line(spot.cell)?.shape?.problems.some(({ field }) => field === spot.field);
    // Against the text it was opened on: what came meanwhile was not seen when this was typed.
    props.onCommit({
      text: typed === openedOn.trim() && !doubted ? undefined : typed,
      // Of a line that was deleted meanwhile nothing stands any more: who writes is told of that.
      meanwhile: isGone() || props.stands === openedOn ? undefined : props.stands,
      opened: openedOn,
      byKey,
    });
  };
  const leave = () => {
    if (done) return;
    done = true;
    props.onLeave();
  };

  const aside = () => {
    const text = (handle?.text() ?? input?.value ?? props.text).trim();
    if (!done && !props.isAnswer && text !== props.stands.trim())
      putTypedAside(sheet.document.id, props.spot, text);
  };
  asPageGoes(aside);

  onMount(() => {
    input?.focus();
    input?.setSelectionRange(input.value.length, input.value.length);
    void loadCommit().catch(() => undefined);
    void loadEditor().then(
      ({ mountEditor }) => {
        if (done) return;
        const text = input?.value ?? props.text;
        const at = input?.selectionStart ?? text.length;
        const focused = document.activeElement === input;
        const stay = done;
        done = true; // the field's own blur, as it goes, is not a commit
        setReady(true);
        done = stay;
        handle = mountEditor(host, {
          text,
          cursor: at,
          label: props.label,
          spot: props.spot,
          words: sheetWords(sheet, props.spot),
          say: setSaid,
          sayArgument: setArgument,
          commit,
          leave,
        });
        if (focused) handle.focus();
      },
      // Without the editor the plain field does.
      () => undefined,
    );
  });
  onCleanup(() => {
    // Taken away with the focus in it (another line was chosen): what was typed counts. With its line deleted, what the
    // caller knows of the line is gone too.
    const text = handle?.text().trim();
    if (!done && text !== undefined && sheet.document.cell(spot.cell) !== undefined) commit(text);
    else if (!done && text !== undefined && text !== openedOn.trim())
      commitTyped(sheet, spot, { text, byKey: false, leave: () => props.onLeave() });
    done = true;
    handle?.destroy();
  });

  return (
    <div class="editor block min-h-target bg-paper lined-wide-pencil">
      <div ref={host} class="min-w-0" />
      <Show when={!ready()}>
        <input
          class="lined-none"
          ref={(element) => {
            input = element;
          }}
          aria-label={props.label}
          // What comes from elsewhere does not wipe out what is being typed.
          value={untrack(() => props.text)}
          spellcheck={false}
          autocomplete="off"
          autocapitalize="off"
          onBlur={(event) => {
            const text = event.currentTarget.value;
            afterPointer(() => commit(text));
          }}
          onKeyDown={(event) => {
            event.stopPropagation();
            if (event.key === 'Enter') commit(event.currentTarget.value, true);
            else if (event.key === 'Escape') leave();
          }}
        />
      </Show>
      <div class="px-6px pb-4px text-small empty:p-0" role="status">
        {said()}
      </div>
      <div class="unseen" role="status">
        {argument()}
      </div>
    </div>
  );
};
