import { brokenScale, type Stretch } from './broken-scale.ts';

/** A dimension to stack, SI. */
export interface StackItem {
  sign: 1 | -1;
  value: number;
  low: number;
  high: number;
}

/** One row of the diagram, in drawn lengths. */
interface Bar {
  /** Where it starts and where it ends: leftwards for a dimension taken away. */
  from: number;
  to: number;
  /** Least and greatest place of its end, by its own spread. */
  low: number;
  high: number;
}

export interface StackBars {
  bars: Bar[];
  /** From nothing to what is left. */
  total: Bar;
  breaks: Stretch[];
}

/** A spread that is not known, such as a warm part's of unknown metal, is not drawn. */
const known = (spread: number): number => (Number.isFinite(spread) ? spread : 0);

/** Bars of a stack, each beginning where the one before it ends, on a scale that is broken where nothing happens. */
export const stackBars = (
  items: readonly StackItem[],
  total: { value: number; low: number; high: number },
  length: number,
): StackBars => {
  const ends = [0];
  for (const { sign, value } of items) ends.push(ends.at(-1)! + sign * value);
  const spreads = [...items, total].map(({ low, high }) => high - low).filter(Number.isFinite);
  const detail = Math.max(Math.abs(total.value), ...spreads) || Math.max(...ends.map(Math.abs)) || 1;
  const scale = brokenScale([...ends, total.value], detail, length);
  const bar = (from: number, to: number, below: number, above: number): Bar => ({
    from: scale.place(from),
    to: scale.place(to),
    low: scale.place(to + known(below)),
    high: scale.place(to + known(above)),
  });
  return {
    bars: items.map((item, i) => {
      const below = item.sign === 1 ? item.low - item.value : item.value - item.high;
      const above = item.sign === 1 ? item.high - item.value : item.value - item.low;
      return bar(ends[i]!, ends[i + 1]!, below, above);
    }),
    total: bar(0, total.value, total.low - total.value, total.high - total.value),
    breaks: scale.stretches.filter(({ broken }) => broken),
  };
};
