import type { CellKind } from '../../../cells/record/cell.ts';
import { searchForm } from '../../../shared/search-form.ts';

/**
 * Library cells that hold every word asked for in their title, purpose or group: what is called just so first, then what
 * begins so, then those with all words in the title.
 */
export const findKinds = (kinds: Iterable<CellKind>, query: string): CellKind[] => {
  const asked = searchForm(query).trim();
  const words = asked.split(/\s+/).filter(Boolean);
  const ranked = [...kinds].flatMap((kind) => {
    const title = searchForm(kind.title);
    const all = `${title} ${searchForm(kind.purpose)} ${searchForm(kind.group)} ${searchForm(kind.key)}`;
    if (!words.every((word) => all.includes(word))) return [];
    const key = searchForm(kind.key);
    const rank =
      title === asked || key === asked || key === words.join('-')
        ? 0
        : title.startsWith(asked)
          ? 1
          : words.every((word) => title.includes(word))
            ? 2
            : 3;
    return [{ kind, rank }];
  });
  return ranked
    .sort((a, b) => a.rank - b.rank || (a.kind.title < b.kind.title ? -1 : 1))
    .map(({ kind }) => kind);
};
