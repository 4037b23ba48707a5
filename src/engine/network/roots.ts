/** How far the figure is from where it is wanted, for a block of trials; NaN where it has no value. */
export type Distance = (trials: Float64Array, n: number) => Float64Array;

/** Where the distance passes through nothing, or seems to. */
export type Crossing =
  | { is: 'root'; at: number }
  /** Nothing all along, as of a size that goes by steps. */
  | { is: 'level'; from: number; to: number }
  /** It is passed over: what it is from nothing on either side. */
  | { is: 'jump'; at: number; before: number; after: number }
  | { is: 'pole'; at: number };

export interface Search {
  crossings: Crossing[];
  /** The trial that came nearest, and how near; undefined where no trial gave a value. */
  nearest: { at: number; distance: number } | undefined;
  /** The distance is the same wherever it has a value. */
  isFlat: boolean;
}

/** Trials computed at a time. */
export const BLOCK = 64;
/** Blocks that one bracket is narrowed by, at most: each makes it a sixty-third as wide. */
const DEEPEST = 14;
/** Widths of a bracket, beside the trials it lies between, at which it is as narrow as doubles are. */
const NARROW = 4 * Number.EPSILON;
/** What is left of the distance at a root, beside what it was when the bracket was found. */
const LEFT = 1e-6;
/** Blocks for all of a search, and answers told: a distance that is all steps or all noise has no end of them. */
const MOST_BLOCKS = 400;
const MOST_FOUND = 32;
/** Near misses that are looked into, the nearest first: two answers may lie between two trials. */
const MISSES = 6;

interface Bracket {
  a: number;
  fa: number;
  b: number;
  fb: number;
}

/**
 * Every place between the first and the last of the `points` where the distance passes through nothing. Each change of
 * sign is bracketed and the bracket narrowed by blocks of trials until its ends are neighbours; then the distances at both
 * ends tell a root, where they have gone to nothing, from a jump and from a pole, where they have not.
 *
 * @param points trials to begin with, in order
 * @param noise a distance that is nothing: what arithmetic leaves of one
 */
export function findCrossings(distance: Distance, points: Float64Array, noise: number): Search {
  const search = new Searching(distance, noise, points);
  search.look();
  return { crossings: search.found(), nearest: search.nearest, isFlat: search.isFlat };
}

class Searching {
  nearest: Search['nearest'];
  isFlat = true;
  private readonly crossings: Crossing[] = [];
  private first = Number.NaN;
  private readonly scale: number;
  private blocks = 0;

  constructor(
    private readonly distance: Distance,
    private readonly noise: number,
    private readonly points: Float64Array,
  ) {
    this.scale = Math.max(Math.abs(points[0] ?? 0), Math.abs(points.at(-1) ?? 0));
  }

  found(): Crossing[] {
    const placeOf = (one: Crossing): number => (one.is === 'level' ? one.from : one.at);
    return this.crossings.sort((a, b) => placeOf(a) - placeOf(b));
  }

  look(): void {
    const { points } = this;
    const values = new Float64Array(points.length);
    for (let from = 0; from < points.length; from += BLOCK)
      values.set(this.at(points.subarray(from, from + BLOCK)), from);
    this.between(points, values, 0);
    this.nearMisses(points, values);
    this.ends(points, values);
  }

  private get isSpent(): boolean {
    return this.blocks > MOST_BLOCKS || this.crossings.length >= MOST_FOUND;
  }

  private at(trials: Float64Array): Float64Array {
    this.blocks++;
    const found = this.distance(trials, trials.length).slice(0, trials.length);
    found.forEach((value, i) => {
      if (!Number.isFinite(value)) {
        found[i] = Number.NaN;
        return;
      }
      if (Number.isNaN(this.first)) this.first = value;
      else if (Math.abs(value - this.first) > this.noise) this.isFlat = false;
      if (!this.nearest || Math.abs(value) < Math.abs(this.nearest.distance))
        this.nearest = { at: trials[i] as number, distance: value };
    });
    return found;
  }

  private sign(value: number): number {
    return Math.abs(value) <= this.noise ? 0 : Math.sign(value);
  }

  /** Changes of sign between trials that follow each other; those without a value are stepped over. */
  private between(points: Float64Array, values: Float64Array, depth: number): void {
    let before = -1;
    for (let i = 0; i < points.length; i++) {
      const value = values[i] as number;
      if (Number.isNaN(value)) continue;
      const sign = this.sign(value);
      if (sign === 0) {
        let last = i;
        for (let j = i + 1; j < points.length && !(Math.abs(values[j] as number) > this.noise); j++)
          if (!Number.isNaN(values[j])) last = j;
        this.level(points, values, before, i, last);
        i = last;
        before = -1;
        continue;
      }
      const [a, b] = [points[before] as number, points[i] as number];
      if (before >= 0 && this.sign(values[before] as number) * sign < 0)
        this.narrow({ a, fa: values[before] as number, b, fb: value }, depth);
      before = i;
    }
  }

  /** From the first trial with nothing to the last: one root, or a stretch of them, of which the ends are found. */
  private level(points: Float64Array, values: Float64Array, before: number, from: number, to: number): void {
    let after = to + 1;
    while (after < points.length && Number.isNaN(values[after])) after++;
    const [a, b] = [points[from] as number, points[to] as number];
    const first = before < 0 ? a : this.edge(points[before] as number, a);
    const last = after >= points.length ? b : this.edge(points[after] as number, b);
    const isWide = last - first > 1e-6 * Math.max(Math.abs(first), Math.abs(last));
    if (isWide) this.crossings.push({ is: 'level', from: first, to: last });
    else this.crossings.push({ is: 'root', at: from === to ? a : (first + last) / 2 });
  }

  /** The last trial with nothing on the way to one with something. */
  private edge(outside: number, inside: number): number {
    const isNothing = (value: number): boolean => this.sign(value) === 0 && !Number.isNaN(value);
    return this.lastInside(outside, inside, isNothing).at;
  }

  /** The last trial, on the way from one inside to one outside, whose distance is still inside; and that distance. */
  private lastInside(
    outside: number,
    inside: number,
    isInside: (distance: number) => boolean,
  ): { at: number; distance: number } {
    let [out, within, distance] = [outside, inside, Number.NaN];
    for (let depth = 0; depth < DEEPEST && !this.isNarrow(out, within); depth++) {
      const trials = spaced(out, within, BLOCK);
      const values = this.at(trials);
      let i = BLOCK - 1;
      while (i > 0 && isInside(values[i] as number)) i--;
      out = trials[i] as number;
      within = trials[i + 1] ?? within;
      distance = values[i + 1] ?? distance;
    }
    return { at: within, distance };
  }

  private isNarrow(a: number, b: number): boolean {
    return Math.abs(b - a) <= NARROW * Math.max(Math.abs(a), Math.abs(b), 1e-3 * this.scale);
  }

  private narrow(bracket: Bracket, depth: number, began = bracket): void {
    if (this.isSpent) return;
    const { a, b, fa, fb } = bracket;
    const most = Math.max(Math.abs(began.fa), Math.abs(began.fb));
    if (depth >= DEEPEST || this.isNarrow(a, b)) {
      const left = Math.max(Math.abs(fa), Math.abs(fb));
      const at = Math.abs(fa) < Math.abs(fb) ? a : b;
      if (left <= Math.max(LEFT * most, this.noise)) this.crossings.push({ is: 'root', at });
      else if (left > 2 * most) this.crossings.push({ is: 'pole', at });
      else this.crossings.push({ is: 'jump', at, before: fa, after: fb });
      return;
    }
    const trials = spaced(a, b, BLOCK);
    const values = this.at(trials);
    let before = 0;
    for (let i = 1; i < BLOCK; i++) {
      const value = values[i] as number;
      if (Number.isNaN(value)) continue;
      if (this.sign(value) === 0) {
        this.level(trials, values, before, i, this.run(values, i));
        before = this.run(values, i) + 1;
        i = before;
        continue;
      }
      const last = values[before] as number;
      if (this.sign(last) * this.sign(value) < 0)
        this.narrow(
          { a: trials[before] as number, fa: last, b: trials[i] as number, fb: value },
          depth + 1,
          depth === 0 ? bracket : began,
        );
      before = i;
    }
  }

  /** The last of the trials from one on with nothing. */
  private run(values: Float64Array, from: number): number {
    let last = from;
    while (last + 1 < values.length && this.sign(values[last + 1] as number) === 0) last++;
    return last;
  }

  /** Two answers may lie between two trials, or one that is touched and not crossed: where it comes near, a closer look. */
  private nearMisses(points: Float64Array, values: Float64Array): void {
    const misses: number[] = [];
    for (let i = 1; i + 1 < points.length; i++) {
      const [left, here, right] = [values[i - 1], values[i], values[i + 1]] as [number, number, number];
      const sign = this.sign(here);
      if (sign === 0 || this.sign(left) !== sign || this.sign(right) !== sign) continue;
      if (Math.abs(here) <= Math.abs(left) && Math.abs(here) <= Math.abs(right) && left !== right)
        misses.push(i);
    }
    misses.sort((a, b) => Math.abs(values[a] as number) - Math.abs(values[b] as number));
    for (const i of misses.slice(0, MISSES))
      this.closer(points[i - 1] as number, points[i + 1] as number, Math.abs(values[i] as number));
  }

  /** Where values end between two trials, as those of a root at nothing do, the answer may lie on the last of them. */
  private ends(points: Float64Array, values: Float64Array): void {
    let looked = 0;
    for (let i = 0; i + 1 < points.length && looked < MISSES; i++) {
      const [here, next] = [values[i] as number, values[i + 1] as number];
      if (Number.isNaN(here) === Number.isNaN(next)) continue;
      looked++;
      const [out, inside] = Number.isNaN(here) ? [i, i + 1] : [i + 1, i];
      const was = Math.abs(values[inside] as number);
      if (this.isSpent || !(was > this.noise)) continue;
      const last = this.lastInside(
        points[out] as number,
        points[inside] as number,
        (value) => !Number.isNaN(value),
      );
      if (Math.abs(last.distance) <= Math.max(LEFT * was, this.noise))
        this.crossings.push({ is: 'root', at: last.at });
    }
  }

  private closer(from: number, to: number, was: number): void {
    let [a, b] = [from, to];
    let left = was;
    let idle = 0;
    for (let depth = 0; depth < DEEPEST && !this.isNarrow(a, b); depth++) {
      const trials = spaced(a, b, BLOCK);
      const values = this.at(trials);
      const sign = this.sign(values[0] as number);
      if (values.some((value) => !Number.isNaN(value) && this.sign(value) !== sign)) {
        this.between(trials, values, 0);
        return;
      }
      let least = 1;
      for (let i = 1; i + 1 < BLOCK; i++)
        if (Math.abs(values[i] as number) < Math.abs(values[least] as number)) least = i;
      a = trials[least - 1] as number;
      b = trials[least + 1] as number;
      // It touches: rounding leaves of a root that is not crossed no more than the root of a double's last place.
      if (Math.abs(values[least] as number) <= 1e-12 * was) {
        this.crossings.push({ is: 'root', at: trials[least] as number });
        return;
      }
      // Towards one that is touched, at a kink too, looks come many times nearer; towards a miss they soon do not. One may
      // have come near by luck.
      const now = Math.abs(values[least] as number);
      idle = now < left / 2 ? 0 : idle + 1;
      if (idle > 2) return;
      left = Math.min(left, now);
    }
  }
}

/** So many trials from one to another, both ends exactly. */
export function spaced(from: number, to: number, n: number): Float64Array {
  const trials = new Float64Array(n);
  for (let i = 0; i < n; i++) trials[i] = from + ((to - from) * i) / (n - 1);
  trials[n - 1] = to;
  return trials;
}
