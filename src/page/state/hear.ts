import { type Command, isRunnable } from './command.ts';
import { isKey, isTyping, watchTyping } from './key.ts';

/** Runs the commands whose keys are heard on the whole page. @returns the way to let go. */
export const hearKeys = (commands: readonly Command[]): (() => void) => {
  const wide = commands.filter(isRunnable).filter(({ heard }) => heard === 'page' || heard === 'always');
  const heard = (event: KeyboardEvent) => {
    if (event.defaultPrevented || document.querySelector('dialog[open]')) return;
    const typing = isTyping(event);
    const command = wide.find(
      (one) => (one.heard === 'always' || !typing) && one.keys?.some((printed) => isKey(printed, event)),
    );
    if (!command || command.can?.() === false) return;
    event.preventDefault();
    // Else an entry under the cursor would begin with it.
    event.stopPropagation();
    command.run();
  };
  // In the capture phase: an editor stops what it hears itself, and a key for the whole page must come first.
  addEventListener('keydown', heard, true);
  const unwatch = watchTyping();
  return () => {
    unwatch();
    removeEventListener('keydown', heard, true);
  };
};
