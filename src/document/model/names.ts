import { isValidCellName } from '../../language/names.ts';

export interface Named {
  id: string;
  name: string | undefined;
  label: string | undefined;
}

/**
 * Names as shown. Two people may give one name to two cells at the same time, or take the name off a cell that the
 * other has just referred to; then the later cell (by id, so that both see the same) gets a number behind its name
 * until somebody renames it, and no formula changes what it means.
 */
export function shownNames(cells: readonly Named[], referred: (id: string) => boolean): Map<string, string> {
  const names = new Map<string, string>();
  const taken = new Set<string>();
  const waiting: Named[] = [];
  for (const cell of [...cells].sort((a, b) => (a.id < b.id ? -1 : 1))) {
    if (cell.name === undefined || cell.name === '') {
      if (referred(cell.id)) waiting.push(cell);
    } else if (taken.has(cell.name)) {
      waiting.push(cell);
    } else {
      taken.add(cell.name);
      names.set(cell.id, cell.name);
    }
  }
  for (const cell of waiting) {
    const name = freeName(cell.name || nameFrom(cell.label ?? ''), (other) => taken.has(other));
    taken.add(name);
    names.set(cell.id, name);
  }
  return names;
}

/** A name nobody has: the wish itself, or the wish with the first free number behind it. */
export function freeName(wish: string, taken: (name: string) => boolean): string {
  if (!taken(wish)) return wish;
  const stem = wish.replace(/_\d+$/, '');
  for (let n = 2; ; n++) if (!taken(`${stem}_${n}`)) return `${stem}_${n}`;
}

/** A valid name from a label: `Bore, as found` gives `bore_as_found`. */
export function nameFrom(label: string): string {
  const slug = label
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '_')
    .replace(/^_+|_+$/g, '')
    .slice(0, 40)
    .replace(/_+$/, '');
  for (const name of [slug, `line_${slug}`]) if (slug !== '' && isValidCellName(name) === true) return name;
  return 'line';
}
