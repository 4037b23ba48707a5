import type { CellRecord, Role } from '../../../shared/sheet/format.ts';
import { ROLE_WORDS } from '../../../shared/sheet/role-words.ts';
import { findUnit } from '../../../shared/units/units.ts';
import { type EntryContext, parseEntry } from '../../language/parse.ts';
import { isCount, isFigure, unitOfHead } from '../entry/table.ts';

const ROLES = new Map<string, Role>(
  (Object.entries(ROLE_WORDS) as Array<[Role, string]>)
    .filter(([role]) => role !== 'cell')
    .map(([role, word]) => [word, role]),
);

type Row = readonly string[];

const isRole = (cell: string): boolean => ROLES.has(cell.toLowerCase());
const isUnit = (cell: string): boolean => findUnit(cell) !== undefined || /^["'°%]$/.test(cell);
/** `±.0002` and `+.0005 -0` in a cell of their own, behind the size they belong to. */
const isSpread = (cell: string): boolean => /^(?:±|\+\/?-|[+-]\s*\d*[.,]?\d+\s+[+-]?\s*\d)/.test(cell);

/** What a row's cell may be besides a bare figure: a formula, a size with its tolerance or class, a diameter. */
const isEntry = (cell: string, context: EntryContext): boolean =>
  isFigure(cell) ||
  /^=./.test(cell) ||
  (/\d/.test(cell) && parseEntry(cell, context).problems.every(({ kind }) => kind === 'ask'));

/** Figures that may be readings of one size. */
const areAlike = (figures: readonly string[]): boolean => {
  const sizes = figures.map((one) => Math.abs(Number.parseFloat(one.replace(',', '.'))));
  return Math.max(...sizes) <= 1.5 * Math.min(...sizes);
};

const LIMITS: ReadonlyArray<readonly ['lower' | 'upper', RegExp]> = [
  ['lower', /^(?:min\b|least|lower|low\b)/i],
  ['upper', /^(?:max\b|greatest|upper|high\b)/i],
];
const limitOfHead = (head: string) => LIMITS.find(([, words]) => words.test(head))?.[0];

/**
 * A row of a spreadsheet as a line: the first text is its label, the first figure or formula its entry, with the unit
 * behind it or in the head of its column, a role word says how it comes about. Columns headed as limits are its limits,
 * further figures like the first are readings with it; whatever else the row says is its note. A row of text alone is a remark.
 */
export const lineFromRow = (
  row: Row,
  context: EntryContext,
  heads: Row = [],
): Partial<CellRecord> | undefined => {
  const filled = row.flatMap((cell, at) => (cell === '' ? [] : [{ cell, at, head: heads[at] ?? '' }]));
  if (filled.length === 0) return undefined;
  const role = filled.map(({ cell }) => ROLES.get(cell.toLowerCase())).find((found) => found !== undefined);
  const figures = filled.filter(({ cell }) => isFigure(cell) || /^=./.test(cell));
  const entries =
    figures.length > 0
      ? figures
      : filled.filter(({ cell }, i) => (i > 0 || filled.length === 1) && isEntry(cell, context));
  const limits = entries.filter(({ head }) => limitOfHead(head));
  const entry = entries.find((one) => !limits.includes(one) && !isSpread(one.cell));
  const isText = ({ cell }: { cell: string }) => !isRole(cell) && !isSpread(cell);
  const label = filled.find((one) => isText(one) && !entries.includes(one) && !isUnit(one.cell))?.cell;
  if (!entry && limits.length === 0) {
    const text = label ?? filled[0]!.cell;
    const rest = filled.filter(({ cell }) => cell !== text && !isRole(cell)).map(({ cell }) => cell);
    if (role && role !== 'remark') {
      const note = rest.join(', ');
      return { role, label: text, ...(note && role !== 'section' && { note }) };
    }
    return { role: 'remark', note: [text, ...rest].join(', ') };
  }
  const used = new Set<number>();
  /** With the unit in the cell behind it, or in the head over it. */
  const written = ({ cell, at, head }: { cell: string; at: number; head: string }): string => {
    used.add(at);
    const next = row[at + 1] ?? '';
    if (!/[\d.,]$/.test(cell) || cell.startsWith('=')) return cell;
    if (isUnit(next)) {
      used.add(at + 1);
      return `${cell} ${next}`;
    }
    const unit = unitOfHead(head);
    return unit && isUnit(unit) ? `${cell} ${unit}` : cell;
  };
  let text = entry ? written(entry) : '';
  const others = entries.filter((one) => one !== entry && !limits.includes(one) && !isSpread(one.cell));
  const spread = filled.find(({ cell, at }) => isSpread(cell) && entry && at > entry.at);
  const isList =
    entry !== undefined &&
    others.length > 0 &&
    !spread &&
    (role === undefined || role === 'measured') &&
    [entry, ...others].every(({ cell }) => isFigure(cell)) &&
    areAlike([entry, ...others].map(({ cell }) => cell));
  if (isList) {
    const list = [entry, ...others];
    const texts = list.map(written);
    const bare = list.map(({ cell }) => cell);
    const unit = texts[0]!.slice(bare[0]!.length);
    // One unit for all stands behind the last.
    text = texts.every((one, i) => one === bare[i]! + unit) ? bare.join('; ') + unit : texts.join('; ');
  }
  if (spread) {
    used.add(spread.at);
    text = `${text} ${spread.cell}`;
  }
  const found = Object.fromEntries(limits.map((one) => [limitOfHead(one.head)!, written(one)]));
  const note = filled
    .filter(({ cell, at }) => !used.has(at) && cell !== label && !isRole(cell))
    .map(({ cell, head }) => (head ? `${head}: ${cell}` : cell))
    .join(', ');
  return {
    role: text.startsWith('=') ? 'worked' : (role ?? (isList ? 'measured' : 'given')),
    ...(label !== undefined && { label }),
    ...(text && { entry: text }),
    ...(limits.length > 0 && { limits: found }),
    ...(note && { note }),
  };
};

/** A name and its figure with no tab between them: `journal = 1.75`, `Journal: 44,45 mm`, `Housing bore  2.2500`. */
const NAMED = /^([\p{L}][^=:;\t]*?)(?:\s*[=:;]\s*|,\s+|\s+)((?:Ø\s*)?[+-]?(?:\d|[.,]\d).*)$/u;

/** Rows of one cell that all are a name and a figure, as rows of two: at least two of them, behind a head or not. */
const partedAtNames = (table: readonly Row[], context: EntryContext): readonly Row[] => {
  if (table.length < 2 || table.some((row) => row.length > 1)) return table;
  const parted = table.map(([cell = '']) => {
    const [, name, figure = ''] = NAMED.exec(cell) ?? [];
    return name && isEntry(figure, context) ? [name, figure] : undefined;
  });
  const isWhole = parted.every((row, i) => row || (i === 0 && parted.length > 2));
  return isWhole ? parted.flatMap((row) => (row ? [row] : [])) : table;
};

/** `H7/g6`, `M8`: what no head of a column says, though it is no figure. */
const IS_CLASS = /\p{L}\d|\d\p{L}/u;

/** What only the head of a column says. */
const isHead = (cell: string): boolean =>
  unitOfHead(cell) !== undefined ||
  /^(?:no\.?|nr\.?|#|what|name|label|part|item|dimension|size|value|unit)s?$/i.test(cell);

/** Lines of a whole table; a head over a column of figures is left out, and so is a column that numbers the rows. */
export const linesFromTable = (table: readonly Row[], context: EntryContext): Partial<CellRecord>[] => {
  const rows = partedAtNames(table, context);
  const [first, ...others] = rows;
  const headed =
    first !== undefined &&
    !first.some((cell) => isFigure(cell) || IS_CLASS.test(cell)) &&
    (others.length > 1 || (others.length > 0 && first.some(isHead))) &&
    others.every((row) => row.some((cell) => isEntry(cell, context)));
  const body = headed ? others : rows;
  const isNumbered = isCount(body, headed ? first[0] : undefined);
  const from = (row: Row): Row => (isNumbered ? row.slice(1) : row);
  const heads = headed ? from(first) : [];
  return body.flatMap((row) => lineFromRow(from(row), context, heads) ?? []);
};
