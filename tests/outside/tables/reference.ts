import { readFileSync } from 'node:fs';

/** One published (or remembered) value the tables are held against. */
export interface ReferenceRow {
  id: string;
  topic: string;
  quantity: string;
  inputs: Record<string, unknown>;
  expected: unknown;
  tolerance: string;
  source: string;
  grade: 'seen' | 'computed' | 'memory';
}

const read = (name: string): unknown =>
  JSON.parse(readFileSync(new URL(`../reference/${name}`, import.meta.url), 'utf8'));

export const reference = [
  ...(read('values.json') as ReferenceRow[]),
  ...(read('repair.json') as ReferenceRow[]),
];

/** Drill diameters in inches by size. */
export const drillReference = read('drills.json') as Record<string, Record<string, number>>;

export const rowsWhere = (wanted: (row: ReferenceRow) => boolean): ReferenceRow[] => {
  const found = reference.filter(wanted);
  if (found.length === 0) throw new Error('no reference row matches: the check would pass on nothing');
  return found;
};

export const rowById = (id: string): ReferenceRow => {
  const row = reference.find((each) => each.id === id);
  if (row === undefined) throw new Error(`reference row ${id} is gone`);
  return row;
};

/** What a check says it checks: reference id, quantity, source, grade. */
export const titleOf = (row: ReferenceRow): string =>
  `${row.id} ${row.quantity} [${row.source}] ${row.grade === 'memory' ? 'from memory' : row.grade}`;
