import type { CellKind } from '../../../cells/record/cell.ts';
import { searchForm } from '../../../shared/search-form.ts';

/** Library cells that hold every word asked for in their title, purpose or group, those with it in the title first. */
export const findKinds = (kinds: Iterable<CellKind>, query: string): CellKind[] => {
  const words = searchForm(query).split(/\s+/).filter(Boolean);
  const ranked = [...kinds].flatMap((kind) => {
    const title = searchForm(kind.title);
    const all = `${title} ${searchForm(kind.purpose)} ${searchForm(kind.group)} ${searchForm(kind.key)}`;
    if (!words.every((word) => all.includes(word))) return [];
    return [{ kind, inTitle: words.every((word) => title.includes(word)) }];
  });
  return ranked
    .sort((a, b) => Number(b.inTitle) - Number(a.inTitle) || (a.kind.title < b.kind.title ? -1 : 1))
    .map(({ kind }) => kind);
};
