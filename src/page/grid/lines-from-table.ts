import type { CellRecord, Role } from '../../../shared/sheet/format.ts';
import { ROLE_WORDS } from '../../../shared/sheet/role-words.ts';
import { isFigure } from '../entry/table.ts';

const ROLES = new Map<string, Role>(
  (Object.entries(ROLE_WORDS) as Array<[Role, string]>)
    .filter(([role]) => role !== 'cell')
    .map(([role, word]) => [word, role]),
);

const UNIT = /^[A-Za-zµ°"′″/%²³·^-]{1,10}$/u;

/**
 * A row of a spreadsheet as a line: the first text is its label, the first figure or formula its entry, a unit behind
 * it goes with it, a role word says how it comes about. A row of text alone is a remark.
 */
export const lineFromRow = (row: readonly string[]): Partial<CellRecord> | undefined => {
  const cells = row.filter((cell) => cell !== '');
  if (cells.length === 0) return undefined;
  const role = cells.map((cell) => ROLES.get(cell.toLowerCase())).find((found) => found !== undefined);
  const at = row.findIndex((cell) => cell !== '' && (isFigure(cell) || /^=./.test(cell)));
  const label = row.find((cell, i) => cell !== '' && i !== at && !ROLES.has(cell.toLowerCase()));
  if (at < 0) {
    const text = label ?? cells[0]!;
    if (role === 'section') return { role, label: text };
    return role && role !== 'remark' ? { role, label: text } : { role: 'remark', note: text };
  }
  const entry = row[at]!;
  const unit = row[at + 1];
  const withUnit =
    unit !== undefined &&
    unit !== label &&
    !ROLES.has(unit.toLowerCase()) &&
    UNIT.test(unit) &&
    /[\d.,\s]$/.test(entry)
      ? `${entry} ${unit}`
      : entry;
  const own = label === unit ? undefined : label;
  return {
    role: entry.startsWith('=') ? 'worked' : (role ?? 'given'),
    ...(own !== undefined && { label: own }),
    entry: withUnit,
  };
};

/** Lines of a whole table; a head over a column of figures is left out. */
export const linesFromTable = (table: ReadonlyArray<readonly string[]>): Partial<CellRecord>[] => {
  const [first, ...others] = table;
  const headed =
    first !== undefined &&
    !first.some(isFigure) &&
    others.length > 1 &&
    others.every((row) => row.some(isFigure));
  return (headed ? others : table).flatMap((row) => lineFromRow(row) ?? []);
};
