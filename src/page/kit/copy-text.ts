/** Puts a text on the clipboard. @returns whether the browser let it be done. */
export const copyText = async (text: string): Promise<boolean> => {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    // Refused, or not there at all on a page without https.
    return copyBySelection(text);
  }
};

/** Copies as a person would who marks a text: the one way a page has that came over plain HTTP from another machine. */
const copyBySelection = (text: string): boolean => {
  const before = document.activeElement;
  const box = document.createElement('textarea');
  box.className = 'unseen';
  box.readOnly = true;
  box.value = text;
  // What is outside an open dialog cannot be marked.
  (document.querySelector('dialog[open]') ?? document.body).append(box);
  box.select();
  const done = document.execCommand('copy');
  box.remove();
  if (before instanceof HTMLElement) before.focus({ preventScroll: true });
  return done;
};
