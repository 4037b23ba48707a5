/** What is repaired, in the order it is offered, by the marks its templates bear. */
const REPAIRS: ReadonlyArray<readonly [label: string, ...marks: string[]]> = [
  ['Bushes', 'bush'],
  ['Journals', 'journal', 'seat'],
  ['Bearings', 'rolling bearing', 'plain bearing', 'split shells'],
  ['Gears', 'gearbox', 'gear', 'backlash', 'shims'],
  ['Hubs and keys', 'ring', 'key', 'taper', 'gear'],
  ['Holes', 'thread', 'dowel'],
  ['Pumps', 'pump'],
];

/** Those a sheet with these marks belongs to: it is listed under the first, and found by each. */
export const repairsOf = (marks: readonly string[] = []): string[] =>
  REPAIRS.filter(([, ...of]) => of.some((mark) => marks.includes(mark))).map(([label]) => label);

export const REPAIR_LABELS = REPAIRS.map(([label]) => label);
