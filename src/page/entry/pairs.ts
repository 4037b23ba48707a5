import { type EntryContext, parseEntry } from '../../language/parse.ts';

/** A figure and the unit behind it, as in `2 mm`, `1,2 kN` and `1 1/2 in`. */
const FIGURE =
  /\+?((?:\d+[ -])?\d+\/[1-9]\d*|\d*[.,]\d+|\d+)(?:[ \u00a0]*([^\d\s.,:;|/+-][^\s,:;|]*))?(?=[\s,:;|]|$)[\s,:|]*/uy;

interface Figure {
  figure: string;
  unit: string | undefined;
}

const figuresIn = (part: string): Figure[] | undefined => {
  const found: Figure[] = [];
  FIGURE.lastIndex = 0;
  while (FIGURE.lastIndex < part.length) {
    const read = FIGURE.exec(part);
    if (!read) return undefined;
    found.push({ figure: read[1]!, unit: read[2] });
  }
  return found;
};

/** Units in the brackets of a head: `Depth (mm)  Force [kN]`. */
const unitsOfHead = (head: string): string[] =>
  [...head.matchAll(/[([]([^)\]\d]+)[)\]]/gu)].map(([, unit]) => unit!.trim());

/**
 * Pairs of two quantities as they are stored, `2 mm: 1.2 kN; 4 mm: 2.3 kN`, from whatever way they were typed or pasted: a
 * pair a line, with tabs, blanks or a colon between, with units in a head over the columns, behind the last pair alone or,
 * for lengths, those of the sheet, and with the user's decimal mark. A text that can be read in two ways, or in none, is
 * given back as it is: what reads it says so.
 */
export const pairsTyped = (
  text: string,
  quantities: readonly [string, string],
  context: EntryContext,
): string => {
  const parts = text
    .split(/[;\n]/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  const head = parts.length > 1 && !/\d/.test(parts[0]!) ? unitsOfHead(parts.shift()!) : [];
  const read = parts.map(figuresIn);
  // Parted into pairs, or one run of figures by turns.
  if (!read.every((figures) => figures && figures.length % 2 === 0)) return text;
  if (parts.length > 1 && !read.every((figures) => figures!.length === 2)) return text;
  const all = read.flatMap((figures) => figures!);
  if (all.length === 0) return text;
  const written =
    writtenPairs(all, quantities, head, context) ??
    // Force before depth, as the units say.
    writtenPairs(turned(all), quantities, [...head].reverse(), context);
  return written
    ? written.flatMap((one, i) => (i % 2 === 0 ? [`${one}: ${written[i + 1]}`] : [])).join('; ')
    : text;
};

/** The other figure of each pair first. */
const turned = (all: readonly Figure[]): Figure[] => all.map((_, i) => all[i ^ 1]!);

/** Each figure as it is stored; nothing where one is not of the quantity of its side. */
const writtenPairs = (
  all: readonly Figure[],
  quantities: readonly [string, string],
  head: readonly string[],
  context: EntryContext,
): string[] | undefined => {
  const units = quantities.map((quantity, side) => {
    const said = all.filter((_, i) => i % 2 === side).flatMap(({ unit }) => unit ?? []);
    const one = said.every((unit) => unit === said[0]) ? said[0] : undefined;
    return one ?? (head.length === 2 ? head[side] : quantity === 'length' ? context.units.length : undefined);
  });
  const written: string[] = [];
  for (const [i, { figure, unit }] of all.entries()) {
    const own = unit ?? units[i % 2];
    const entry = parseEntry(`${figure} ${own ?? ''}`, { ...context, quantity: quantities[i % 2]! });
    if (own === undefined || entry.problems.length > 0) return undefined;
    written.push(entry.committed);
  }
  return written;
};
