import { createSignal, onCleanup } from 'solid-js';
import type { Here } from '../state/elsewhere.ts';

const fieldOf = (target: EventTarget | null): Here | undefined => {
  if (!(target instanceof HTMLElement) || !target.matches('input, textarea, [contenteditable]'))
    return undefined;
  const line = target.closest<HTMLElement>('[data-cell]')?.dataset.cell;
  if (line === undefined && !target.closest('.title-block')) return undefined;
  return {
    ...(line !== undefined && { line }),
    typing: target.closest<HTMLElement>('[data-field]')?.dataset.field ?? (line ? 'entry' : 'title'),
  };
};

/** The field of the sheet that something has been typed in since it has the focus, whichever it is. Call it inside a component. */
export const createTypedIn = () => {
  const [typed, setTyped] = createSignal<Here>();
  const begin = ({ target }: Event) => setTyped(fieldOf(target));
  const end = () => setTyped(undefined);
  // An editor that goes with its text does not say that it has lost the focus.
  const taken = ({ key }: KeyboardEvent) => {
    if (key === 'Enter' || key === 'Escape') queueMicrotask(end);
  };
  document.addEventListener('input', begin);
  document.addEventListener('keydown', taken, true);
  for (const type of ['focusout', 'change']) document.addEventListener(type, end);
  onCleanup(() => {
    document.removeEventListener('input', begin);
    document.removeEventListener('keydown', taken, true);
    for (const type of ['focusout', 'change']) document.removeEventListener(type, end);
  });
  return typed;
};
