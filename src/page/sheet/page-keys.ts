import type { Notices } from '../state/notices.ts';
import type { Sheet } from '../state/sheet.ts';

/** Keys that work anywhere on the sheet, except where text is being typed. @returns the way to let go. */
export const pageKeys = (sheet: Sheet, notices: Notices): (() => void) => {
  const heard = (event: KeyboardEvent) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const target = event.composedPath()[0];
    if (target instanceof HTMLElement && target.matches('input, textarea, select, [contenteditable="true"]'))
      return;
    const key = event.key.toLowerCase();
    if (key !== 'z' && key !== 'y') return;
    event.preventDefault();
    const again = key === 'y' || event.shiftKey;
    const label = again ? sheet.document.redo() : sheet.document.undo();
    notices.say(
      label
        ? `${again ? 'Done again' : 'Taken back'}: ${label}.`
        : again
          ? 'Nothing to do again.'
          : 'Nothing to take back.',
    );
  };
  addEventListener('keydown', heard);
  return () => removeEventListener('keydown', heard);
};
