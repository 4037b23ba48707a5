import { createEffect, createSignal, onCleanup, untrack } from 'solid-js';
import { readKept, writeKept } from './kept.ts';

/** A text of a sheet that can be typed: of a cell by its field, or of the sheet itself where `cell` is empty. */
export interface TypedPlace {
  cell: string;
  field: string;
}

/** What was being typed as its page went. */
export interface TypedAside extends TypedPlace {
  text: string;
}

/** Field of what a line that is being put in is called, of the cell above it. */
export const NEW_LINE = 'new line';

const isSound = (one: unknown): one is TypedAside =>
  typeof one === 'object' &&
  one !== null &&
  ['cell', 'field', 'text'].every((key) => typeof (one as Record<string, unknown>)[key] === 'string');

const keyOf = (sheet: string): string => `typed-${sheet}`;

const keptOf = (sheet: string): TypedAside[] => {
  const list = readKept(keyOf(sheet));
  return Array.isArray(list) ? list.filter(isSound) : [];
};

const isAt = (one: TypedPlace | undefined, { cell, field }: TypedPlace): boolean =>
  one?.cell === cell && one.field === field;

/**
 * Puts aside what is typed and not entered: half a figure must not become one, nor be lost. Where the browser keeps
 * nothing, it is lost.
 * @param sheet id of the sheet
 */
export const putTypedAside = (sheet: string, { cell, field }: TypedPlace, text: string): void => {
  const others = keptOf(sheet).filter((one) => !isAt(one, { cell, field }));
  writeKept(keyOf(sheet), [...others, { cell, field, text } satisfies TypedAside]);
};

/** Has a field put aside what is typed in it as the page goes. */
export const asPageGoes = (putAside: () => void): void => {
  addEventListener('pagehide', putAside);
  onCleanup(() => removeEventListener('pagehide', putAside));
};

/** What was put aside of a sheet, the oldest first; each is given once. */
export const takeTypedAside = (sheet: string): TypedAside | undefined => {
  const [first, ...rest] = keptOf(sheet);
  writeKept(keyOf(sheet), rest.length > 0 ? rest : undefined);
  return first;
};

const [resumed, setResumed] = createSignal<TypedAside>();

/** How long the field may take to come, ms. */
const LONGEST = 5000;

/** Has the field at a place go on with a text, once it is there. */
export const resumeTyped = (one: TypedAside): void => {
  setResumed(one);
  setTimeout(() => setResumed((now) => (now === one ? undefined : now)), LONGEST);
};

/** Whether a text of this place is to be gone on with: what it is folded in opens. */
export const isResumed = (place: (field: string, cell: string) => boolean): boolean => {
  const one = resumed();
  return one !== undefined && place(one.field, one.cell);
};

/** Hands a field the text it is to go on with. */
export const onResume = (place: () => TypedPlace | undefined, use: (text: string) => void): void =>
  createEffect(() => {
    const one = resumed();
    const own = place();
    if (!one || !own || !isAt(one, own)) return;
    untrack(() => {
      setResumed(undefined);
      use(one.text);
    });
  });

/** Types a text into a field as its user would, so that leaving the field takes it. */
export const typeInto = (element: HTMLInputElement | HTMLTextAreaElement, text: string): void => {
  const folded = element.closest('details');
  if (folded) folded.open = true;
  element.focus();
  element.select();
  document.execCommand('insertText', false, text);
};
