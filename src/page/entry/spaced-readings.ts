/** Whole or mixed fraction, decimal with either mark, or whole number. */
const NUMBER = String.raw`[+-]?(?:(?:\d+[ -])?\d+\/[1-9]\d*|\d*[.,]\d+|\d+)`;

/** A figure, the unit behind it where it has one, and what parts it from the next: `1.7481`, `44,912 mm`, `.0015",`. */
const FIGURE = new RegExp(
  String.raw`(${NUMBER})(?:[ \t\u00a0\u202f]*(["'′″]|°[CF]|[a-zµ]{1,5}))?(?:,(?=\s)|(?=\s|$))\s*`,
  'giuy',
);

/** What is said of all readings at once, behind the last. */
const SPREAD = /\s*(?:±|\+\s*\/?\s*-).*$/su;

export interface Figure {
  figure: string;
  unit: string | undefined;
}

/** Figures parted by blanks, tabs, line ends or commas with a blank behind; nothing where anything else stands there. */
export const figuresIn = (text: string): Figure[] | undefined => {
  const body = text.trim();
  const found: Figure[] = [];
  let end = 0;
  for (const [all, figure, unit] of body.matchAll(FIGURE)) {
    found.push({ figure: figure!, unit });
    end += all.length;
  }
  return end === body.length ? found : undefined;
};

const isWhole = ({ figure }: Figure): boolean => /^[+-]?\d+$/.test(figure);

/** Whether figures with blanks between them can be nothing but a list: no mixed number, no digits in groups, no limits. */
const isList = (figures: readonly Figure[]): boolean => {
  // A sign behind the first figure makes limits of what follows: `2.0010 +.0001 -.0002`.
  if (figures.slice(1).some(({ figure }) => /^[+-]/.test(figure))) return false;
  const whole = figures.filter(isWhole).length;
  if (whole === 0 || figures.every(({ unit }) => unit !== undefined)) return true;
  // `1 1.5` is nobody's list, and `44 912` may be one number.
  return whole === figures.length && !figures.slice(1).every(({ figure }) => /^\d{3}$/.test(figure));
};

/** Readings of each place along: parted by `|`, or a line each where a line holds several. */
const placesIn = (body: string): string[] => {
  if (body.includes('|')) return body.split('|');
  const lines = body.split('\n').filter((line) => line.trim() !== '');
  const several = lines.some(
    (line) => line.includes(';') || ((figuresIn(line)?.length ?? 0) > 1 && isList(figuresIn(line)!)),
  );
  return lines.length > 1 && several ? lines : [body];
};

/**
 * Readings parted by nothing but blanks, tabs or line ends, as the list they are: `1.7481 1.7480 in` is
 * `1.7481; 1.7480 in`, and lines of several readings are as many places along. Only where all have the same unit, or the last
 * alone has one. Any other text is given back as it is.
 */
export const spacedReadings = (text: string): string => {
  const spread = SPREAD.exec(text)?.[0] ?? '';
  const body = text.slice(0, text.length - spread.length);
  const rows = placesIn(body);
  let parted = rows.length > 1 && !body.includes('|');
  const places: Figure[][] = [];
  for (const row of rows) {
    const place: Figure[] = [];
    for (const part of row.split(';')) {
      const figures = figuresIn(part);
      if (!figures) return text;
      if (figures.length > 1) {
        if (!isList(figures)) return text;
        parted = true;
      }
      place.push(...figures);
    }
    if (place.length > 0) places.push(place);
  }
  const all = places.flat();
  // As it should be already, or one figure alone.
  if (!parted || all.length < 2) return text;
  const unit = all.at(-1)!.unit;
  const alike = (one: Figure) => one.unit === unit;
  if (!all.every(alike) && all.slice(0, -1).some((one) => one.unit !== undefined)) return text;
  const list = places.map((place) => place.map(({ figure }) => figure).join('; ')).join(' | ');
  // Marks stand at the figure, words apart from it.
  const behind = unit === undefined ? '' : /^[a-zµ]/i.test(unit) ? ` ${unit}` : unit;
  return `${list}${behind}${spread && ` ${spread.trim()}`}`;
};
