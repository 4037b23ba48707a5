import type { CellKind } from '../../../cells/record/cell.ts';

const fold = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();

/** Library cells that hold every word asked for in their title, purpose or group, those with it in the title first. */
export const findKinds = (kinds: Iterable<CellKind>, query: string): CellKind[] => {
  const words = fold(query).split(/\s+/).filter(Boolean);
  const ranked = [...kinds].flatMap((kind) => {
    const title = fold(kind.title);
    const all = `${title} ${fold(kind.purpose)} ${fold(kind.group)} ${fold(kind.key)}`;
    if (!words.every((word) => all.includes(word))) return [];
    return [{ kind, inTitle: words.every((word) => title.includes(word)) }];
  });
  return ranked
    .sort((a, b) => Number(b.inTitle) - Number(a.inTitle) || (a.kind.title < b.kind.title ? -1 : 1))
    .map(({ kind }) => kind);
};
