import {
  acceptCompletion,
  autocompletion,
  closeCompletion,
  completionKeymap,
  completionStatus,
  moveCompletionSelection,
  selectedCompletion,
} from '@codemirror/autocomplete';
import { history, historyKeymap } from '@codemirror/commands';
import { EditorSelection, EditorState, Prec } from '@codemirror/state';
import { EditorView, keymap } from '@codemirror/view';
import { afterPointer } from '../kit/pointer.ts';
import { argumentHint, closeArgumentHint } from './argument-hint.ts';
import { begunReading } from './begun-reading.ts';
import { completeWith } from './complete.ts';
import { entryKeys } from './entry-keys.ts';
import { highlighted } from './highlight.ts';
import { reachableOffers } from './offers.ts';
import type { SheetWords } from './sheet-words.ts';
import type { EntrySpot } from './spot.ts';
import { readingsFrom, readTable } from './table.ts';
import { theme } from './theme.ts';
import { underlined } from './underline.ts';

export interface EditorOptions {
  text: string;
  /** Where the cursor stands at first. */
  cursor: number;
  label: string;
  spot: EntrySpot;
  words: SheetWords;
  /** Tells what is wrong with the text, or that nothing is. */
  say: (message: string | undefined) => void;
  /** Tells which argument of a function the caret is in, or that it is in none. */
  sayArgument: (words: string | undefined) => void;
  commit: (text: string, byKey?: boolean) => void;
  leave: () => void;
}

export interface EditorHandle {
  text: () => string;
  focus: () => void;
  destroy: () => void;
}

/** A column from a spreadsheet is a list of readings; anything else stays as it is. */
const readingsPasted = (text: string): string =>
  /[\n\t]/.test(text.trim()) ? (readingsFrom(readTable(text))?.text ?? text) : text;

/** What is offered for the last digits of a reading is there however soon Tab comes. */
const takeReading = (view: EditorView, plan: string | undefined): boolean => {
  const { main } = view.state.selection;
  const begun = main.empty ? begunReading(view.state.doc.toString(), main.head, plan) : undefined;
  if (!begun) return false;
  const { from, reading } = begun;
  closeCompletion(view);
  view.dispatch({
    changes: { from, to: main.head, insert: reading },
    selection: EditorSelection.cursor(from + reading.length),
    userEvent: 'input.complete',
  });
  return true;
};

/** Tab takes the first offer where some are shown; else it goes on to the next field, as everywhere. */
const takeOffer = (view: EditorView): boolean => {
  if (completionStatus(view.state) !== 'active') return false;
  if (!selectedCompletion(view.state)) moveCompletionSelection(true)(view);
  return acceptCompletion(view);
};

/**
 * The editor of one entry. It stands in a shadow root: there it adopts its style sheets, where in the page it would add
 * a style element, which the Content-Security-Policy forbids.
 */
export const mountEditor = (host: HTMLElement, options: EditorOptions): EditorHandle => {
  const root = host.shadowRoot ?? host.attachShadow({ mode: 'open', delegatesFocus: true });
  const view = new EditorView({
    parent: root,
    root,
    state: EditorState.create({
      doc: options.text,
      selection: EditorSelection.cursor(Math.min(options.cursor, options.text.length)),
      extensions: [
        Prec.highest(
          keymap.of([
            { key: 'Tab', run: (v) => takeReading(v, options.words.plan()) || takeOffer(v) },
            {
              key: 'Enter',
              run: (v) => {
                if (selectedCompletion(v.state)) return acceptCompletion(v);
                options.commit(v.state.doc.toString(), true);
                return true;
              },
            },
            {
              key: 'Escape',
              run: (v) => {
                if (completionStatus(v.state) !== null && closeCompletion(v)) return true;
                if (closeArgumentHint(v)) return true;
                options.leave();
                return true;
              },
            },
          ]),
        ),
        history(),
        autocompletion({
          override: [completeWith(options.words)],
          selectOnOpen: false,
          // Nothing is taken without being chosen, so there is nothing to be saved from.
          interactionDelay: 0,
          icons: false,
          aboveCursor: false,
        }),
        reachableOffers,
        keymap.of([...completionKeymap, ...historyKeymap, ...entryKeys]),
        EditorView.lineWrapping,
        EditorView.contentAttributes.of({
          'aria-label': options.label,
          autocapitalize: 'off',
          autocorrect: 'off',
          spellcheck: 'false',
          enterkeyhint: 'done',
        }),
        EditorView.domEventHandlers({
          blur: (_event, v) => {
            // Taken away while the window is elsewhere, nothing was left by the user.
            if (!document.hasFocus()) return;
            const text = v.state.doc.toString();
            afterPointer(() => options.commit(text));
          },
          // The grid's own keys must not hear what is typed here.
          keydown: (event) => {
            event.stopPropagation();
            return false;
          },
        }),
        EditorView.clipboardInputFilter.of(readingsPasted),
        highlighted(options.spot),
        argumentHint(options.words.library, options.sayArgument),
        underlined(options.words.problems, (problems) => options.say(problems[0]?.message)),
        theme,
      ],
    }),
  });
  // Heard before the editor hears it: at each key that asks for a frame to measure itself in, and the engine's answer
  // would have to wait for that frame.
  const enter = (event: KeyboardEvent) => {
    const other = event.shiftKey || event.ctrlKey || event.metaKey || event.altKey;
    if (event.key !== 'Enter' || other || event.isComposing || view.composing) return;
    if (selectedCompletion(view.state)) return;
    event.preventDefault();
    event.stopPropagation();
    options.commit(view.state.doc.toString(), true);
  };
  host.addEventListener('keydown', enter, true);
  return {
    text: () => view.state.doc.toString(),
    focus: () => view.focus(),
    destroy: () => {
      host.removeEventListener('keydown', enter, true);
      view.destroy();
    },
  };
};
