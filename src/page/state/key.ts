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

/** Whether text is being typed where a key was pressed. */
export const isTyping = (event: Event): boolean => {
  const target = event.composedPath()[0];
  return (
    target instanceof HTMLElement &&
    target.matches('input:not([type="checkbox"], [type="radio"]), textarea, select, [contenteditable="true"]')
  );
};
