/** A pasted table on one line, as a field of one line takes it. */
export const pastedOnOneLine = (text: string): string =>
  text
    .trim()
    .replace(/[ \u00a0]*\r?\n\s*/g, '; ')
    .replace(/\t+/g, '  ');
