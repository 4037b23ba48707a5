import { FAULTS } from '../../language/bounds/bound.ts';
import { middleOf, type Part } from './cone.ts';

const ALL = Number.POSITIVE_INFINITY;

/** Parts looked at for one end of a row: a count and no time, so that page, command line and another shop agree. */
export const MOST_PARTS = 1000;
/** The same where a function takes long to enclose. */
export const FEW_PARTS = 30;
/** The same of what jumps: with each way out of its conditions supposed, and then as it is, with what that told. */
export const SUPPOSED = 300;
export const BESIDE = 100;
/** So many of them one after another without a bound, and none is looked for any more. */
const ENDLESS = 100;
/** Found to this share of the reach is found. */
const FOUND = 1e-6;
/** No part is split that is narrower than this share of the whole. */
const NARROW = 2 ** -40;

interface Open {
  outer: number;
  middle: number;
  number: number;
  low: Float64Array;
  high: Float64Array;
  slopes: Float64Array;
}

/**
 * The least value over a box, by splitting it best first. `outer` is what it surely is not below, `best` a value that comes
 * about. Within a part, a source whose way is known there is put to its end. `isLost`: somewhere there is no value at all.
 *
 * @param enough what is not below this is not looked into
 */
export function search(
  over: (low: Float64Array, high: Float64Array) => Part,
  low: Float64Array,
  high: Float64Array,
  outer: number,
  reach: number,
  most: number,
  enough = ALL,
): { outer: number; best: number; isLost: boolean } {
  const n = low.length;
  const width = low.map((at, i) => (high[i] as number) - at);
  const hair = reach < ALL ? FOUND * reach : 0;
  const open: Open[] = [];
  let left = most;
  let count = 0;
  let best = enough;
  let closed = ALL;
  let isLost = false;
  let endless = 0;

  /** A value that comes about. */
  const real = (value: number): void => {
    if (value < best && value > -ALL) best = value;
  };

  /** At each source's ends, and all at once: where a size is nothing there is often no value, and halving never comes there. */
  const probe = (): void => {
    const middle = low.map((at, i) => middleOf(at, high[i] as number));
    const points = [low, high];
    for (let i = 0; i < n; i++)
      for (const end of [low, high]) {
        const at = middle.slice();
        at[i] = end[i] as number;
        points.push(at);
      }
    for (const at of points) {
      if (isLost) return;
      const part = over(at, at);
      if (part.isLost) isLost = true;
      else if (part.isReal) real(part.middleHi);
    }
  };

  /** Looks at a part, and again at the face of it where the ways known there lead. */
  const look = (a: Float64Array, b: Float64Array, above: number): void => {
    for (;;) {
      left--;
      const part = over(a, b);
      if (part.isLost) isLost = true;
      const known = Math.max(above, part.lo);
      if (part.isReal) real(part.middleHi);
      let isPinned = false;
      if ((part.flags & FAULTS) === 0)
        for (let i = 0; i < n; i++) {
          if (a[i] === b[i]) continue;
          const [down, up] = [part.slopes[2 * i] as number, part.slopes[2 * i + 1] as number];
          if (down < 0 && up > 0) continue;
          if (!isPinned) {
            a = a.slice();
            b = b.slice();
            isPinned = true;
          }
          if (down >= 0) b[i] = a[i] as number;
          else a[i] = b[i] as number;
        }
      if (isPinned && left > 0 && known < best - hair) {
        above = known;
        continue;
      }
      open.push({
        outer: known,
        middle: Number.isNaN(part.middleHi) ? ALL : part.middleHi,
        number: count++,
        low: a,
        high: b,
        // The next part is worked out in the same place.
        slopes: part.slopes.slice(),
      });
      return;
    }
  };

  look(low, high, outer);
  if (!isLost && open[0]?.outer === -ALL) probe();
  while (left > 1 && !isLost && endless < ENDLESS) {
    let at = -1;
    for (let i = open.length - 1; i >= 0; i--) {
      const one = open[i] as Open;
      if (one.outer >= best - hair) {
        closed = Math.min(closed, one.outer);
        open[i] = open[open.length - 1] as Open;
        open.pop();
        at = -1;
      }
    }
    for (let i = 0; i < open.length; i++) if (at < 0 || isBefore(open[i] as Open, open[at] as Open)) at = i;
    const next = open[at];
    // What cannot be split any more is no better than the rest.
    if (!next || closed <= next.outer) break;
    endless = next.outer === -ALL ? endless + 1 : 0;
    const by = splitBy(next, width);
    if (by < 0) {
      // As small as parts get, and still open: it stays so.
      if (next.outer === -ALL) break;
      closed = Math.min(closed, next.outer);
      open.splice(at, 1);
      continue;
    }
    open[at] = open[open.length - 1] as Open;
    open.pop();
    const middle = middleOf(next.low[by] as number, next.high[by] as number);
    const [below, above] = [next.high.slice(), next.low.slice()];
    below[by] = middle;
    above[by] = middle;
    look(next.low, below, next.outer);
    look(above, next.high, next.outer);
  }
  for (const one of open) closed = Math.min(closed, one.outer);
  return { outer: Math.min(best, closed), best, isLost };
}

const isBefore = (a: Open, b: Open): boolean =>
  a.outer !== b.outer ? a.outer < b.outer : a.middle !== b.middle ? a.middle < b.middle : a.number > b.number;

/** The source to split a part in: the one that moves the row most; of those without bound to that, the widest. */
function splitBy({ low, high, slopes }: Open, width: Float64Array): number {
  let found = -1;
  let most = 0;
  let isSteep = false;
  for (let i = 0; i < low.length; i++) {
    const wide = (high[i] as number) - (low[i] as number);
    if (
      !(wide > NARROW * (width[i] as number)) ||
      middleOf(low[i] as number, high[i] as number) >= (high[i] as number)
    )
      continue;
    const slope = Math.max(Math.abs(slopes[2 * i] as number), Math.abs(slopes[2 * i + 1] as number));
    const steep = !(slope < ALL);
    const weight = steep ? wide / (width[i] as number) : slope * wide;
    if (weight === 0 || (isSteep && !steep)) continue;
    if (weight > most || (steep && !isSteep)) {
      found = i;
      most = weight;
      isSteep = steep;
    }
  }
  return found;
}
