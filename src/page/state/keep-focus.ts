import type { SheetContext } from './context.ts';
import { focusWork } from './focus-work.ts';

/** What a press may take away from under its own focus; cells of the grid and open entries see to theirs. */
const mayGo = (element: Element): boolean =>
  element.matches('button, a, select, input, textarea, summary') && !element.closest('.editor');

/**
 * Brings the focus back to the work where what had it is taken away or can be pressed no more: a remedy that was taken, a
 * form that was closed, a question that was answered. Looked for only while such a thing has the focus.
 * @returns the way to let go
 */
export const keepFocus = (context: SheetContext): (() => void) => {
  let last: Element | undefined;
  const back = () => {
    if (!last || (last.isConnected && !last.matches(':disabled'))) return;
    const over = document.querySelector<HTMLElement>('dialog[open] button, .bench-entry input');
    if (!over) focusWork(context);
    else if (document.activeElement === document.body || document.activeElement === last) over.focus();
  };
  const observer = new MutationObserver(back);
  const into = ({ target }: FocusEvent) => {
    observer.disconnect();
    last = target instanceof Element && mayGo(target) ? target : undefined;
    if (last)
      observer.observe(document.body, { childList: true, subtree: true, attributeFilter: ['disabled'] });
  };
  // Left for nothing that can have it: by a press on the page, or because it went.
  const out = ({ relatedTarget }: FocusEvent) => {
    if (relatedTarget) return;
    observer.disconnect();
    queueMicrotask(back);
  };
  document.addEventListener('focusin', into);
  document.addEventListener('focusout', out);
  return () => {
    observer.disconnect();
    document.removeEventListener('focusin', into);
    document.removeEventListener('focusout', out);
  };
};
