import type { Histogram } from './types.ts';

const BINS = 60;
/** Share of the values that a histogram leaves beyond each of its ends. */
const BEYOND = 0.0005;

/** Mean and standard deviation of deviations from a reference value. */
export function moments(values: Float32Array): { mean: number; deviation: number } {
  let mean = 0;
  let squares = 0;
  for (let i = 0; i < values.length; i++) {
    const delta = (values[i] as number) - mean;
    mean += delta / (i + 1);
    squares += delta * ((values[i] as number) - mean);
  }
  return { mean, deviation: values.length > 1 ? Math.sqrt(squares / (values.length - 1)) : 0 };
}

/** The shortest interval that holds a share `p` of sorted values (JCGM 101, 7.7.4). */
export function shortest(sorted: Float32Array, p: number): { low: number; high: number } {
  const n = sorted.length;
  const inside = Math.min(n - 1, Math.floor(p * n + 0.5));
  let at = 0;
  for (let i = 1; i + inside < n; i++) if (width(sorted, i, inside) < width(sorted, at, inside)) at = i;
  return { low: sorted[at] as number, high: sorted[at + inside] as number };
}

/** The interval that leaves the same share of sorted values beyond either end. */
export function symmetric(sorted: Float32Array, p: number): { low: number; high: number } {
  const n = sorted.length;
  const inside = Math.min(n - 1, Math.floor(p * n + 0.5));
  const at = Math.floor((n - inside) / 2);
  return { low: sorted[at] as number, high: sorted[Math.min(n - 1, at + inside)] as number };
}

const width = (sorted: Float32Array, at: number, inside: number): number =>
  (sorted[at + inside] as number) - (sorted[at] as number);

/** Counts of sorted values, but for the few at either end; `base` is added to the edges. */
export function histogramOf(sorted: Float32Array, base: number): Histogram {
  const n = sorted.length;
  const from = sorted[Math.floor(BEYOND * n)] as number;
  const to = sorted[Math.min(n - 1, Math.ceil((1 - BEYOND) * n))] as number;
  const counts = new Array<number>(BINS).fill(0);
  let below = 0;
  let above = 0;
  const scale = to > from ? BINS / (to - from) : 0;
  for (const value of sorted) {
    if (value < from) below++;
    else if (value > to) above++;
    else {
      const bin = Math.min(BINS - 1, Math.floor((value - from) * scale));
      counts[bin] = (counts[bin] as number) + 1;
    }
  }
  return { from: base + from, to: base + to, counts, below, above };
}
