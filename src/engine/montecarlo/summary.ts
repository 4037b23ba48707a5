import { endsOf } from '../draws/sort.ts';
import type { Histogram } from './types.ts';

const BINS = 60;
/** Share of the values that a histogram leaves beyond each of its ends. */
const BEYOND = 0.0005;

export interface Interval {
  low: number;
  high: number;
}

/** What drawn values come to. */
export interface Summary {
  mean: number;
  deviation: number;
  /** The shortest interval that holds the share asked for (JCGM 101, 7.7.4). */
  shortest: Interval;
  /** The interval of that share which leaves as many values beyond either end. */
  symmetric: Interval;
  /** Without the few at either end. */
  histogram: Histogram;
}

/**
 * Sums up values that were drawn, at least one and none of them NaN: deviations from `base`, as what comes of it is too but for the edges
 * of the histogram. `p` is the share of the values in an interval.
 */
export function summaryOf(values: Float32Array, p: number, base: number): Summary {
  const n = values.length;
  const inside = Math.min(n - 1, Math.floor(p * n + 0.5));
  // As many intervals hold that share as there are values for them to begin at.
  const intervals = n - inside;
  const beyond = Math.floor(BEYOND * n);
  const at = endsOf(values, Math.max(intervals, beyond + 1));
  let first = 0;
  let width = Number.POSITIVE_INFINITY;
  for (let i = 0; i < intervals; i++) {
    const next = at(i + inside) - at(i);
    if (next >= width) continue;
    width = next;
    first = i;
  }
  const middle = Math.floor(intervals / 2);
  const from = (i: number): Interval => ({ low: at(i), high: at(Math.min(n - 1, i + inside)) });
  return {
    ...moments(values),
    shortest: from(first),
    symmetric: from(middle),
    histogram: histogramOf(values, at(beyond), at(Math.min(n - 1, n - beyond)), base),
  };
}

function moments(values: Float32Array): { mean: number; deviation: number } {
  const n = values.length;
  // About one of them: what is summed is no larger than the spread.
  const about = values[0] as number;
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < n; i++) {
    const delta = (values[i] as number) - about;
    sum += delta;
    squares += delta * delta;
  }
  const deviation = n > 1 ? Math.sqrt(Math.max(0, squares - (sum * sum) / n) / (n - 1)) : 0;
  return { mean: about + sum / n, deviation };
}

function histogramOf(values: Float32Array, from: number, to: number, base: number): Histogram {
  const counts = new Array<number>(BINS).fill(0);
  let below = 0;
  let above = 0;
  const scale = to > from ? BINS / (to - from) : 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] as number;
    if (value < from) below++;
    else if (value > to) above++;
    else {
      const bin = Math.min(BINS - 1, Math.floor((value - from) * scale));
      counts[bin] = (counts[bin] as number) + 1;
    }
  }
  return { from: base + from, to: base + to, counts, below, above };
}
