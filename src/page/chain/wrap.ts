/** A text in lines of at most `width` characters, broken at blanks; what does not fit in `most` lines ends in dots. */
export const wrapText = (text: string, width: number, most: number): string[] => {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (longer.length <= width) line = longer;
    else {
      if (line !== '') lines.push(line);
      line = word;
    }
  }
  if (line !== '') lines.push(line);
  const shown = lines.slice(0, most).map((one) => (one.length > width ? `${one.slice(0, width - 1)}…` : one));
  const last = shown.at(-1);
  if (lines.length > most && last !== undefined && !last.endsWith('…'))
    shown[most - 1] = `${last.slice(0, width - 1)}…`;
  return shown;
};
