import { createSignal, onCleanup } from 'solid-js';
import type { OpenSheet } from '../../document/storage/open-sheet.ts';
import { withFigures } from './with-figures.ts';

/** Whether the last entry is on the disk, as it changes. */
export const createStorageState = (opened: OpenSheet) => {
  const [state, setState] = createSignal(opened.state());
  onCleanup(opened.observeState((now) => withFigures(() => setState(now))));
  return state;
};
