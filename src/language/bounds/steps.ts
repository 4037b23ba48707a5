import { Bound, FAULTS, LOST, TURN } from './bound.ts';
import { addDown, addUp, productDown, productUp } from './directed.ts';

const STEEP = Number.POSITIVE_INFINITY;

/** One number in, and what else the function takes as constants; undefined where it has no value. */
export type Stepping = (x: number, scale: number) => number | undefined;

/** A function that rises by steps: INT, ROUND and their kin. What is nearly a whole step counts as one, as in `ties.ts`. */
export class Steps extends Bound {
  readonly parts: readonly Bound[];

  constructor(
    private readonly of: Bound,
    private readonly scale: Bound,
    private readonly step: Stepping,
  ) {
    super();
    this.parts = [of];
  }

  forward(): void {
    const { of, scale, step } = this;
    of.forward();
    scale.forward();
    if (!Number.isFinite(of.lo) || !Number.isFinite(of.hi) || !Number.isFinite(scale.hi)) {
      this.take(of.lo, of.hi, of.flags | TURN);
      if (of.lo > Number.NEGATIVE_INFINITY) this.lo = Number.NEGATIVE_INFINITY;
      if (of.hi < Number.POSITIVE_INFINITY) this.hi = Number.POSITIVE_INFINITY;
      return;
    }
    const [a, b, c, d] = [
      step(of.lo, scale.lo),
      step(of.lo, scale.hi),
      step(of.hi, scale.lo),
      step(of.hi, scale.hi),
    ];
    if (a === undefined || b === undefined || c === undefined || d === undefined) {
      this.lose(of.flags | LOST);
      return;
    }
    const [lo, hi] = [Math.min(a, b, c, d), Math.max(a, b, c, d)];
    this.take(lo, hi, lo === hi ? of.flags : of.flags | TURN);
  }

  back(lo: number, hi: number): void {
    if (this.lo !== this.hi) this.of.back(lo < 0 ? -STEEP : 0, hi > 0 ? STEEP : 0);
  }
}

/** A function with steps whose step may itself move: between `x` and some way beside it. */
export class LooseSteps extends Bound {
  readonly parts: readonly Bound[];

  constructor(
    private readonly of: Bound,
    private readonly by: Bound,
    /** How far the value may lie below and above what was given, in steps. */
    private readonly below: number,
    private readonly above: number,
  ) {
    super();
    this.parts = [of, by];
  }

  forward(): void {
    const { of, by } = this;
    of.forward();
    by.forward();
    const flags = of.flags | by.flags | TURN;
    if (by.lo <= 0 && by.hi >= 0) {
      this.lose(flags | LOST);
      return;
    }
    // A hair more, for what counts as a whole step.
    const most = Math.max(-by.lo, by.hi) * (1 + 1e-9);
    this.take(addDown(of.lo, -this.below * most), addUp(of.hi, this.above * most), flags);
  }

  back(lo: number, hi: number): void {
    this.by.back(-STEEP, STEEP);
    this.of.back(lo < 0 ? -STEEP : 0, hi > 0 ? STEEP : 0);
  }
}

/** MOD: what is left after whole divisions; a straight line until the next whole division, then back to 0. */
export class Remainder extends Bound {
  readonly parts: readonly Bound[];
  /** Whole divisions, where they are the same all over the box. */
  private whole: number | undefined;

  constructor(
    private readonly of: Bound,
    private readonly by: Bound,
    private readonly scale: Bound,
    private readonly wholeOf: (x: number, y: number, scale: number) => { whole: number; isExact: boolean },
  ) {
    super();
    this.parts = [of, by];
  }

  override get blamed(): readonly Bound[] {
    return [this.by];
  }

  forward(): void {
    const { of, by, scale } = this;
    of.forward();
    by.forward();
    scale.forward();
    const flags = of.flags | by.flags;
    this.whole = undefined;
    if (by.lo <= 0 && by.hi >= 0) {
      this.lose(flags | LOST);
      return;
    }
    const low = Math.min(by.lo, 0);
    const high = Math.max(by.hi, 0);
    if (![of.lo, of.hi, by.lo, by.hi, scale.hi].every(Number.isFinite)) {
      this.take(low, high, flags | TURN);
      return;
    }
    const ends = [of.lo, of.hi].flatMap((x) =>
      [by.lo, by.hi].flatMap((y) => [scale.lo, scale.hi].map((most) => this.wholeOf(x, y, most))),
    );
    const [first] = ends as [{ whole: number; isExact: boolean }];
    const isSame = ends.every(({ whole }) => whole === first.whole);
    if (!isSame || ends.some(({ isExact }) => isExact)) {
      // On a whole division nothing is left, and just below one nearly all.
      this.take(low, high, isSame ? flags & FAULTS : flags | TURN);
      if (isSame && ends.every(({ isExact }) => isExact)) this.take(0, 0, flags);
      else if (isSame) {
        this.lo = Math.min(0, this.restDown(first.whole));
        this.hi = Math.max(0, this.restUp(first.whole));
      }
      return;
    }
    this.whole = first.whole;
    this.take(this.restDown(first.whole), this.restUp(first.whole), flags);
  }

  private restDown(whole: number): number {
    return addDown(this.of.lo, -productUp(this.by.lo, this.by.hi, whole, whole));
  }

  private restUp(whole: number): number {
    return addUp(this.of.hi, -productDown(this.by.lo, this.by.hi, whole, whole));
  }

  back(lo: number, hi: number): void {
    if (this.lo === this.hi) return;
    if (this.whole === undefined) {
      this.of.back(-STEEP, STEEP);
      this.by.back(-STEEP, STEEP);
      return;
    }
    this.of.back(lo, hi);
    const whole = 0 - this.whole;
    this.by.back(productDown(lo, hi, whole, whole), productUp(lo, hi, whole, whole));
  }
}
