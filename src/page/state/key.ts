type Pressed = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>;

const NAMES: Readonly<Record<string, string>> = {
  '↑': 'ArrowUp',
  '↓': 'ArrowDown',
  '←': 'ArrowLeft',
  '→': 'ArrowRight',
  Space: ' ',
};

/**
 * Whether a pressed key is the one printed as `Ctrl+Shift+Z`. Ctrl is also Command; a sign such as `?` is the sign
 * however the keyboard comes by it.
 */
export const isKey = (printed: string, event: Pressed): boolean => {
  const parts = printed.split('+');
  const name = parts.pop() || '+';
  const key = NAMES[name] ?? name;
  const sign = key.length === 1 && /[^\p{L}\p{N} ]/u.test(key);
  return (
    event.key.toLowerCase() === key.toLowerCase() &&
    (event.ctrlKey || event.metaKey) === parts.includes('Ctrl') &&
    event.altKey === parts.includes('Alt') &&
    (sign || event.shiftKey === parts.includes('Shift'))
  );
};

/** Texts of fields as they were last taken: what has been typed since is not of the sheet yet. */
const taken = new WeakMap<EventTarget, string>();

const noteTaken = ({ target }: Event): void => {
  if (target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement)
    taken.set(target, target.value);
};

/** Follows what is typed in fields. @returns the way to let go. */
export const watchTyping = (): (() => void) => {
  addEventListener('focusin', noteTaken, true);
  addEventListener('change', noteTaken, true);
  return () => {
    removeEventListener('focusin', noteTaken, true);
    removeEventListener('change', noteTaken, true);
  };
};

/**
 * Whether a key goes to the text typed where it was pressed. Keys with Ctrl do not where nothing is being typed: in a list
 * box, or in a field that stands as it was taken. Left to the browser they undo what was typed last in some other field.
 */
export const isTyping = (event: KeyboardEvent): boolean => {
  const target = event.composedPath()[0];
  if (!(target instanceof HTMLElement)) return false;
  const command = event.ctrlKey || event.metaKey;
  if (target.matches('select')) return !command;
  if (target.matches('[contenteditable="true"]')) return true;
  if (!target.matches('input:not([type="checkbox"], [type="radio"]), textarea')) return false;
  const { value } = target as HTMLInputElement;
  return !command || (taken.get(target) ?? value) !== value;
};
