import type { Extension } from '@codemirror/state';
import { EditorView } from '@codemirror/view';

/**
 * A list of offers that is longer than its box can be scrolled, so it must be reachable; a press on it leaves the focus
 * in the entry, which is taken when it loses it.
 */
export const reachableOffers: Extension = EditorView.updateListener.of(({ view }) => {
  const list = view.dom.querySelector<HTMLElement>('.cm-tooltip-autocomplete > ul');
  if (!list || list.tabIndex === 0) return;
  list.tabIndex = 0;
  list.addEventListener('mousedown', (event) => event.preventDefault());
});
