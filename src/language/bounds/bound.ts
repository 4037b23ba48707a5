import { addDown, addUp } from './directed.ts';

/** What is amiss, or worth saying, of an enclosure somewhere in the box; the first three go on to all that depends on it. */
export const LOST = 1; // no value: the root of what is below zero, a size beyond a table
export const POLE = 2; // a value without bound: what stands below a stroke passes through 0
export const MUTE = 4; // a function that does not say how it moves
export const TURN = 8; // more than one branch of an IF, or more than one step, comes about
export const FAULTS = LOST | POLE | MUTE;

/**
 * One operation of a formula over a box: encloses its value, and hands slopes down to what it is made of. A slope here
 * is any quotient of differences between two points of the box, so that it exists at kinks and, without bound, at jumps.
 * Ends are rounded outward.
 */
export abstract class Bound {
  lo = Number.NEGATIVE_INFINITY;
  hi = Number.POSITIVE_INFINITY;
  flags = 0;

  abstract readonly parts: readonly Bound[];
  /** Encloses the value, from what the ports under it hold. */
  abstract forward(): void;
  /** Adds to the slopes of the ports under it, for slopes `lo` to `hi` of the whole in this operation. After `forward`. */
  abstract back(lo: number, hi: number): void;

  /** It takes long to enclose. */
  get isSlow(): boolean {
    return false;
  }

  /** The parts that bring about what is amiss here. */
  get blamed(): readonly Bound[] {
    return this.parts;
  }

  protected take(lo: number, hi: number, flags: number): void {
    this.lo = lo;
    this.hi = hi;
    this.flags = flags;
  }

  /** Somewhere in the box there is no value. */
  protected lose(flags: number): void {
    this.take(Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, flags);
  }
}

/** A quantity the formula refers to. */
export class Port extends Bound {
  /** Slopes of the whole in it. */
  dlo = 0;
  dhi = 0;
  readonly parts: readonly Bound[] = [];

  forward(): void {}

  back(lo: number, hi: number): void {
    this.dlo = addDown(this.dlo, lo);
    this.dhi = addUp(this.dhi, hi);
  }
}

/**
 * Second look at a part that reaches where the operation above it has no value or no bound: whoever holds the ports may know
 * better what it can be, and narrows its ends.
 */
export interface Doubt {
  narrow: ((part: Bound) => void) | undefined;
}

/** A number as written. */
export class Constant extends Bound {
  readonly parts: readonly Bound[] = [];

  constructor(value: number) {
    super();
    if (Number.isFinite(value)) this.take(value, value, 0);
    else this.lose(LOST);
  }

  forward(): void {}
  back(): void {}
}
