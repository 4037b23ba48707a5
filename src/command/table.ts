/** Characters a text takes up: marks that stand on the letter before them take none. */
const width = (text: string): number => [...text.replace(/\p{M}/gu, '')].length;

/** Rows in aligned columns, two spaces apart; the last of a row runs free. Columns in `right` are set to the right. */
export const alignColumns = (
  rows: readonly (readonly string[])[],
  right: readonly number[] = [],
): string[] => {
  const widths: number[] = [];
  for (const row of rows)
    for (const [i, text] of row.slice(0, -1).entries()) widths[i] = Math.max(widths[i] ?? 0, width(text));
  return rows.map((row) =>
    row
      .map((text, i) => {
        if (i === row.length - 1) return text;
        const gap = ' '.repeat((widths[i] as number) - width(text));
        return right.includes(i) ? gap + text : text + gap;
      })
      .join('  ')
      .trimEnd(),
  );
};
