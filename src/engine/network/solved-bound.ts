import { Bound, FAULTS, LOST, type Port } from '../../language/bounds/bound.ts';
import {
  addDown,
  addUp,
  down,
  productDown,
  productUp,
  quotientDown,
  quotientUp,
  up,
} from '../../language/bounds/directed.ts';
import { type Enclosure, enclose } from '../../language/bounds/enclose.ts';
import type { EngineFunction } from './functions.ts';
import { type Ring, slotIn } from './ring.ts';

interface Range {
  lo: number;
  hi: number;
}

/** Rounds of looking for a range that the sizes of a ring do not leave, and of narrowing it then. */
const MOST_ROUNDS = 12;
const NARROWINGS = 3;
/** What the size that is worked out may be off by, as a share of it. */
const HAIR = 1e-13;
/** Part of its width by which a range is tried wider, so that what comes out may lie inside it. */
const WIDER = 0.25;

const at = (value: number): Range => ({ lo: value, hi: value });
const less = (x: Range, y: Range): Range => ({ lo: addDown(x.lo, -y.hi), hi: addUp(x.hi, -y.lo) });
const sum = (x: Range, y: Range): Range => ({ lo: addDown(x.lo, y.lo), hi: addUp(x.hi, y.hi) });
const times = (x: Range, y: Range): Range => ({
  lo: productDown(x.lo, x.hi, y.lo, y.hi),
  hi: productUp(x.lo, x.hi, y.lo, y.hi),
});
const over = (x: Range, y: Range): Range => ({
  lo: quotientDown(x.lo, x.hi, y.lo, y.hi),
  hi: quotientUp(x.lo, x.hi, y.lo, y.hi),
});
const both = (x: Range, y: Range): Range => ({ lo: Math.max(x.lo, y.lo), hi: Math.min(x.hi, y.hi) });

/**
 * The size of a ring over all that stands outside it: an interval Newton step about the size in the middle of the box
 * (Moore, Kearfott, Cloud, Introduction to Interval Analysis, 2009, 8.1) shows that for everything in the box there is one
 * size in a range and no second one there. Its slopes follow from those of what comes out round the ring.
 */
export class SolvedBound extends Bound {
  private readonly formulas: readonly Enclosure[];
  private slopes: Range[] = [];

  constructor(
    readonly parts: readonly Bound[],
    ring: Ring,
    functions: ReadonlyMap<string, EngineFunction>,
    private readonly solve: (outside: number[]) => number | undefined,
  ) {
    super();
    const slots = 1 + ring.outside + ring.formulas.length;
    this.formulas = ring.formulas.map((formula) => enclose(formula, slots, slotIn(ring), functions));
  }

  override get isSlow(): boolean {
    return true;
  }

  forward(): void {
    let flags = 0;
    for (const part of this.parts) {
      part.forward();
      flags |= part.flags;
    }
    this.slopes = this.parts.map(() => at(0));
    const box = this.parts.map(({ lo, hi }): Range => ({ lo, hi }));
    const middle = box.map(({ lo, hi }) => Math.min(hi, lo + (hi - lo) / 2));
    const size = middle.every(Number.isFinite) ? this.solve(middle) : undefined;
    if (size === undefined) this.lose(flags | LOST);
    else if (box.every(({ lo, hi }) => lo === hi)) this.take(size, size, flags);
    else {
      const found = this.narrowed(size, middle, box);
      if (!found) this.lose(flags | LOST);
      else {
        const { lo, hi } = found.size;
        this.slopes = found.slopes;
        this.take(lo - HAIR * Math.abs(lo), hi + HAIR * Math.abs(hi), flags | found.flags);
      }
    }
  }

  /** A range that holds the size for all in the box, with its slopes; undefined where none is found that does. */
  private narrowed(
    size: number,
    middle: readonly number[],
    box: readonly Range[],
  ): { size: Range; slopes: Range[]; flags: number } | undefined {
    const start = this.outOf(at(size), middle.map(at));
    if (!start) return undefined;
    let range = this.outOf(at(size), box)?.value;
    if (!range) return undefined;
    range = { lo: Math.min(range.lo, size), hi: Math.max(range.hi, size) };
    let known: { size: Range; slopes: Range[]; flags: number } | undefined;
    for (let round = 0, narrowings = 0; round < MOST_ROUNDS && narrowings < NARROWINGS; round++) {
      const out = this.outOf(range, box);
      if (!out) return known;
      const [own = at(0), ...outside] = out.slopes;
      const left = less(at(1), own);
      if (!(left.lo > 0 || left.hi < 0)) return known;
      // What comes out with the size as in the middle, by the slopes: less of it is lost than by the formulas alone.
      const moved = outside.reduce(
        (all, slope, i) => sum(all, times(slope, less(box[i] as Range, at(middle[i] as number)))),
        start.value,
      );
      const next = sum(at(size), over(less(moved, at(size)), left));
      if (!(next.hi - next.lo < Number.POSITIVE_INFINITY)) return known;
      if (next.lo >= range.lo && next.hi <= range.hi) {
        range = both(range, next);
        known = { size: range, slopes: outside.map((slope) => over(slope, left)), flags: out.flags };
        narrowings++;
      } else if (known) return known;
      else {
        const wide = WIDER * (next.hi - next.lo);
        range = {
          lo: down(Math.min(range.lo, next.lo - wide)),
          hi: up(Math.max(range.hi, next.hi + wide)),
        };
      }
    }
    return known;
  }

  /** What comes out round the ring, and its slopes in the size that goes in and in what stands outside. */
  private outOf(
    size: Range,
    outside: readonly Range[],
  ): { value: Range; slopes: Range[]; flags: number } | undefined {
    const { formulas } = this;
    const results: Range[] = [];
    let flags = 0;
    for (const { root, ports } of formulas) {
      [size, ...outside, ...results].forEach(({ lo, hi }, i) => {
        const port = ports[i] as Port;
        port.lo = lo;
        port.hi = hi;
        port.flags = 0;
        port.dlo = port.dhi = 0;
      });
      root.forward();
      flags |= root.flags;
      if (root.flags & FAULTS) return undefined;
      results.push({ lo: root.lo, hi: root.hi });
    }
    const first = 1 + outside.length;
    const slopes = Array.from({ length: first + formulas.length }, () => at(0));
    slopes[slopes.length - 1] = at(1);
    for (let k = formulas.length - 1; k >= 0; k--) {
      const { root, ports } = formulas[k] as Enclosure;
      const { lo, hi } = slopes[first + k] as Range;
      if (lo === 0 && hi === 0) continue;
      root.back(lo, hi);
      for (let i = 0; i < first + k; i++) {
        const { dlo, dhi } = ports[i] as Port;
        slopes[i] = sum(slopes[i] as Range, { lo: dlo, hi: dhi });
      }
    }
    return { value: results.at(-1) as Range, slopes: slopes.slice(0, first), flags };
  }

  back(lo: number, hi: number): void {
    if (lo === 0 && hi === 0) return;
    const isLost = (this.flags & FAULTS) !== 0;
    this.parts.forEach((part, i) => {
      if (part.lo === part.hi) return;
      if (isLost) part.back(Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);
      else {
        const slope = times({ lo, hi }, this.slopes[i] as Range);
        part.back(slope.lo, slope.hi);
      }
    });
  }
}
