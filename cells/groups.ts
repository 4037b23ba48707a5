import type { CellKind } from './record/cell.ts';

export type Group = CellKind['group'];

/** In the order of a job: find out what is there, choose the repair, work out the fit, prove it. */
const GROUPS: readonly Group[] = [
  'measuring',
  'materials',
  'bore and shaft',
  'fits',
  'heat',
  'clearance',
  'threads',
  'machine work',
];

/** Kinds by group in that order, by title within; groups that hold none are left out. */
export const grouped = (kinds: Iterable<CellKind>): { group: Group; kinds: CellKind[] }[] => {
  const all = [...kinds].sort((a, b) => (a.title < b.title ? -1 : a.title > b.title ? 1 : 0));
  return GROUPS.map((group) => ({ group, kinds: all.filter((kind) => kind.group === group) })).filter(
    (one) => one.kinds.length > 0,
  );
};
