import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { Draw } from '../engine/slips/draw.ts';

/** How a worked out quantity follows from two before it, lengths in metres. */
export type Step = { kind: 'mean' | 'product' | 'offset'; left: number; right: number };

/** A synthetic sheet: `sources` leaves with a spread each, then quantities worked out from two before them. */
export interface Chain {
  quantities: number;
  leaves: { micrometres: number; tolerance: number }[];
  /** Quantity `leaves.length + i` is `steps[i]`. */
  steps: Step[];
  /** Leaves upstream of each quantity. */
  upstream: number[][];
  /** Median number of leaves upstream of a worked out quantity. */
  median: number;
}

const name = (index: number): string => `q${index}`;

/** A chain whose worked out quantities have a median of about 8 leaves upstream. */
export function chain(quantities: number, sources: number, seed = 1): Chain {
  const draw = new Draw(seed);
  const leaves = Array.from({ length: sources }, () => ({
    micrometres: draw.whole(30_000, 60_000),
    tolerance: draw.whole(5, 40),
  }));
  const upstream: number[][] = leaves.map((_, i) => [i]);
  const steps: Step[] = [];
  while (upstream.length < quantities) {
    const wanted = Math.min(sources, draw.of([2, 3, 5, 7, 8, 8, 9, 11, 14, 18]));
    let best: { left: number; right: number; all: number[] } | undefined;
    for (let attempt = 0; attempt < 24; attempt++) {
      const left = Math.max(0, upstream.length - 1 - draw.whole(0, 2 * sources));
      const right = draw.whole(0, upstream.length - 1);
      const all = [...new Set([...(upstream[left] as number[]), ...(upstream[right] as number[])])];
      if (left !== right && (!best || Math.abs(all.length - wanted) < Math.abs(best.all.length - wanted)))
        best = { left, right, all };
    }
    if (!best) continue;
    steps.push({ kind: draw.of(['mean', 'mean', 'offset', 'product']), left: best.left, right: best.right });
    upstream.push(best.all);
  }
  const counts = upstream
    .slice(sources)
    .map((all) => all.length)
    .sort((a, b) => a - b);
  return { quantities, leaves, steps, upstream, median: counts[counts.length >> 1] ?? 1 };
}

export const leafEntry = (micrometres: number, tolerance: number): string =>
  `${(micrometres / 1000).toFixed(3)} mm ± ${tolerance} um`;

function formula({ kind, left, right }: Step): string {
  const [a, b] = [name(left), name(right)];
  if (kind === 'mean') return `= (${a} + ${b}) / 2`;
  return kind === 'product' ? `= ${a} * ${b} / 45 mm` : `= ${a} - ${b} / 2 + 20 mm`;
}

/** The chain as a sheet. */
export function chainSheet({ leaves, steps }: Chain): SheetFile {
  const cells: CellRecord[] = leaves.map(({ micrometres, tolerance }, i) => ({
    id: `c${i}`,
    role: 'given',
    name: name(i),
    quantity: 'length',
    entry: leafEntry(micrometres, tolerance),
  }));
  steps.forEach((step, i) => {
    const at = leaves.length + i;
    cells.push({ id: `c${at}`, role: 'worked', name: name(at), quantity: 'length', entry: formula(step) });
  });
  return {
    format: 'fitwright-sheet',
    version: 2,
    title: { title: 'chain' },
    units: { length: 'mm' },
    rule: 'worst-case',
    cells,
  };
}

/** The same edits for every contender: a leaf at a time, each to a size it never had before. */
export function edits(of: Chain, count: number): { leaf: number; micrometres: number }[] {
  const draw = new Draw(99);
  return Array.from({ length: count }, (_, i) => ({
    leaf: (i * 7) % of.leaves.length,
    micrometres: draw.whole(30_000, 60_000),
  }));
}
