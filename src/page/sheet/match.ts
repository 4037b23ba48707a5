import { searchForm } from '../../../shared/search-form.ts';
/** One thing to be found: a command, a line, a cell of the library. */
export interface Findable {
  id: string;
  /** Head it stands under. */
  group: string;
  label: string;
  /** Said behind it: the key, the value, what it is for. */
  beside?: string;
  /** What it is called in formulas. */
  name?: string;
  /** Further words it is found by. */
  also?: string;
  run: () => void;
}

/** 4 where it is called just that, 3 where the label, behind the number of a line, begins with the query, 2 where a word of it begins with each word asked for, 1 where all are held. */
const rank = (item: Findable, query: string, words: readonly string[]): number => {
  const label = searchForm(item.label);
  const names = [item.name ?? '', label.replace(/^\d+ /, '')];
  if (names.some((name) => searchForm(name) === query)) return 4;
  if (label.startsWith(query) || label.replace(/^\d+ /, '').startsWith(query)) return 3;
  const parts = label.split(/[^\p{L}\p{N}_.]+/u);
  if (words.every((word) => parts.some((part) => part.startsWith(word)))) return 2;
  const all = `${label} ${searchForm(item.also ?? '')} ${searchForm(item.beside ?? '')}`;
  return words.every((word) => all.includes(word)) ? 1 : 0;
};

const MOST = 60;

/**
 * Things that hold every word of the query, the best first, each group together in the place of its best one. An empty
 * query leaves all as they stand.
 */
export const find = (items: readonly Findable[], query: string): Findable[] => {
  const wanted = searchForm(query).trim();
  const words = wanted.split(/\s+/).filter(Boolean);
  if (words.length === 0) return items.slice(0, MOST);
  const ranked = items
    .map((item, at) => ({ item, at, rank: rank(item, wanted, words) }))
    .filter((one) => one.rank > 0)
    .sort((a, b) => b.rank - a.rank || a.at - b.at)
    .slice(0, MOST);
  const groups = [...new Set(ranked.map(({ item }) => item.group))];
  return groups.flatMap((group) => ranked.filter(({ item }) => item.group === group).map(({ item }) => item));
};
