/** A figure with a decimal mark, and the unit behind it where it has one: `1.7481`, `44,912 mm`, `.0015"`. */
const FIGURE = /([+-]?(?:\d+[.,]\d+|[.,]\d+))(?:[\s\u00a0]*(["′″µ]|[a-zµ]{1,5}))?(?=[\s\u00a0]|$)/giu;

/**
 * Readings parted by nothing but blanks, tabs or line ends, as the list they are: `1.7481 1.7480 in` is
 * `1.7481; 1.7480 in`. Only where every one has a decimal mark, so that `2 1/4` stays one size, and where all have the same
 * unit or the last alone has one. Any other text is given back as it is.
 */
export const spacedReadings = (text: string): string => {
  const found = [...text.matchAll(FIGURE)];
  const rest = text.replace(FIGURE, '').trim();
  // A sign behind the first figure makes limits of what follows: `2.0010 +.0001 -.0002`.
  const limits = found.slice(1).some(([, figure]) => /^[+-]/.test(figure ?? ''));
  if (found.length < 2 || rest !== '' || limits) return text;
  const units = found.map(([, , unit]) => unit);
  const unit = units.at(-1);
  const alike = units.every((one) => one === unit) || units.slice(0, -1).every((one) => one === undefined);
  if (!alike) return text;
  const list = found.map(([, figure]) => figure).join('; ');
  return unit ? `${list} ${unit}` : list;
};
