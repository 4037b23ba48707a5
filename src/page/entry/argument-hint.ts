import { type EditorState, type Extension, StateEffect, StateField } from '@codemirror/state';
import { EditorView, showTooltip, type Tooltip, ViewPlugin } from '@codemirror/view';
import type { TradeFunction } from '../../../cells/record/cell.ts';
import { isFormula } from '../../language/grammar/tree.ts';
import { type Call, callAt } from './call.ts';
import { argumentOf, type Signature, signaturesOf } from './signature.ts';

type Signatures = ReadonlyMap<string, Signature>;

interface Hint {
  known: Signatures;
  call: Call | undefined;
  signature: Signature | undefined;
  /** Parenthesis of the call whose hint was sent away. */
  closed: number | undefined;
}

const setKnown = StateEffect.define<Signatures>();
const close = StateEffect.define<null>();

const hintIn = (state: EditorState, known: Signatures, closed: number | undefined): Hint => {
  const text = state.doc.toString();
  const { main } = state.selection;
  const call = main.empty && isFormula(text) ? callAt(text, main.head) : undefined;
  const signature = call && known.get(call.name.toUpperCase());
  return { known, call, signature, closed: call?.open === closed ? closed : undefined };
};

const isShown = (hint: Hint): boolean => hint.signature !== undefined && hint.closed === undefined;

const element = (tag: string, text: string, name = ''): HTMLElement => {
  const made = document.createElement(tag);
  made.textContent = text;
  made.className = name;
  return made;
};

/** `ROUND(number; places)` with the present argument marked, and below it what that argument may be. */
const draw = (signature: Signature, call: Call): HTMLElement => {
  const now = argumentOf(signature, call.argument);
  const box = element('div', '', 'w-arguments');
  // The same is said in words beside the editor.
  box.setAttribute('aria-hidden', 'true');
  const head = element('div', `${signature.name}(`);
  signature.takes.forEach(({ name }, i) => {
    if (i > 0) head.append('; ');
    head.append(element(i === now ? 'b' : 'span', name, i === now ? 'w-now' : ''));
  });
  head.append(signature.more ? '; …)' : ')');
  box.append(head, element('div', words(signature, call, false), 'w-kind'));
  return box;
};

/** What the present argument is, in words. */
const words = (signature: Signature, call: Call, whole = true): string => {
  const now = argumentOf(signature, call.argument);
  const argument = now === undefined ? undefined : signature.takes[now];
  if (!argument) {
    const { length } = signature.takes;
    return `${signature.name} takes ${length === 0 ? 'nothing' : length === 1 ? 'one argument' : `${length} arguments`}.`;
  }
  const place = signature.more ? call.argument + 1 : `${now! + 1} of ${signature.takes.length}`;
  return whole
    ? `${signature.name}, ${signature.purpose}; argument ${place}: ${argument.name}, ${argument.kind}`
    : `${argument.name}: ${argument.kind}`;
};

const field = StateField.define<Hint>({
  create: (state) => hintIn(state, new Map(), undefined),
  update(hint, transaction) {
    let { known } = hint;
    let closed = hint.closed === undefined ? undefined : transaction.changes.mapPos(hint.closed);
    for (const effect of transaction.effects) {
      if (effect.is(setKnown)) known = effect.value;
      if (effect.is(close)) closed = hint.call?.open;
    }
    const same = known === hint.known && closed === hint.closed;
    return same && !transaction.docChanged && !transaction.selection
      ? hint
      : hintIn(transaction.state, known, closed);
  },
  provide: (from) =>
    showTooltip.from(from, (hint): Tooltip | null =>
      isShown(hint)
        ? {
            pos: hint.call!.from,
            above: true,
            create: () => ({ dom: draw(hint.signature!, hint.call!) }),
          }
        : null,
    ),
});

/** Sends the hint away until another function is called. @returns whether one was there. */
export const closeArgumentHint = (view: EditorView): boolean => {
  if (!isShown(view.state.field(field))) return false;
  view.dispatch({ effects: close.of(null) });
  return true;
};

/**
 * While the caret stands inside a function's parentheses: which arguments it takes, what the present one may be.
 * @param say told the same in words, or that there is nothing to tell.
 */
export const argumentHint = (
  library: () => Promise<readonly TradeFunction[]>,
  say: (words: string | undefined) => void,
): Extension => [
  field,
  ViewPlugin.define((view) => {
    void library().then((trade) => {
      if (view.dom.isConnected) view.dispatch({ effects: setKnown.of(signaturesOf(trade)) });
    });
    return {};
  }),
  EditorView.updateListener.of(({ state, startState }) => {
    const hint = state.field(field);
    if (hint === startState.field(field, false)) return;
    say(isShown(hint) ? words(hint.signature!, hint.call!) : undefined);
  }),
];
