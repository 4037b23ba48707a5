import type { CellRecord, SheetFile } from './format.ts';

/** What a reader must know of a sheet that takes one way of several: passed over, the ways not taken would be judged too. */
export const WAYS = 'ways';

type Taken = SheetFile['ways'];
type Line = Pick<CellRecord, 'way'>;

/** Several ways to one end. */
export interface Fork {
  to: string;
  /** In the order of the sheet. */
  by: string[];
  /** The one taken; none while each counts. */
  taken?: string;
}

/** Where a sheet forks, in the order of its lines. One way alone is no fork. */
export function forksOf(lines: Iterable<Line>, ways: Taken): Fork[] {
  const found = new Map<string, Set<string>>();
  for (const { way } of lines) {
    if (!way?.to || !way.by) continue;
    const by = found.get(way.to) ?? new Set();
    found.set(way.to, by.add(way.by));
  }
  return [...found]
    .filter(([, by]) => by.size > 1)
    .map(([to, by]) => {
      const taken = ways && Object.hasOwn(ways, to) ? ways[to] : undefined;
      // A way that is gone, or is called otherwise by now, sets nothing aside.
      return { to, by: [...by], ...(taken !== undefined && by.has(taken) ? { taken } : {}) };
    });
}

/** The way taken in place of that of a line; undefined where the line counts. */
export const takenInstead = ({ way }: Line, forks: readonly Fork[]): string | undefined => {
  const taken = way && forks.find(({ to }) => to === way.to)?.taken;
  return taken === way?.by ? undefined : taken;
};

/** The sheet with what its reader must know of it. */
export const withNeeds = (file: SheetFile): SheetFile => {
  const { needs = [], ...rest } = file;
  const others = needs.filter((name) => name !== WAYS);
  const all = file.ways && Object.keys(file.ways).length > 0 ? [...others, WAYS] : others;
  return all.length > 0 ? { ...file, needs: all } : (rest as SheetFile);
};
