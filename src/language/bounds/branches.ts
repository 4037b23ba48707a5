import { TIE } from '../functions/settled.ts';
import type { CompareOperator } from '../syntax/syntax.ts';
import { Bound, FAULTS, TURN } from './bound.ts';
import { addDown, addUp, mulDown, mulUp, productDown, productUp } from './directed.ts';

/** A condition is a number between 0 and 1: 1 where it holds all over the box, 0 where it does nowhere. */
const OPEN = { lo: 0, hi: 1 } as const;

/** Slope of a step up: without bound. */
const STEEP = Number.POSITIVE_INFINITY;

/** A comparison, equal within {@link TIE} of what entered. */
export class Comparison extends Bound {
  readonly parts: readonly Bound[];

  constructor(
    private readonly op: CompareOperator,
    readonly left: Bound,
    readonly right: Bound,
    private readonly scale: Bound,
  ) {
    super();
    this.parts = [left, right];
  }

  forward(): void {
    const { left, right, scale, op } = this;
    left.forward();
    right.forward();
    scale.forward();
    const flags = left.flags | right.flags;
    const below = addDown(left.lo, -right.hi);
    const above = addUp(left.hi, -right.lo);
    // As far apart as this may count as equal, and as this surely does.
    const most = mulUp(TIE, Math.max(scale.hi, Math.abs(left.lo), left.hi, Math.abs(right.lo), right.hi));
    const least = mulDown(TIE, Math.max(0, scale.lo, least0(left), least0(right)));
    let sure: boolean | undefined;
    if (op === '>=') sure = below >= -least ? true : above < -most ? false : undefined;
    else if (op === '>') sure = below > most ? true : above <= least ? false : undefined;
    else if (op === '<=') sure = above <= least ? true : below > most ? false : undefined;
    else if (op === '<') sure = above < -most ? true : below >= -least ? false : undefined;
    else {
      const apart = below > most || above < -most;
      const equal = below >= -least && above <= least;
      sure = apart || equal ? equal === (op === '=') : undefined;
    }
    if (sure === undefined) this.take(OPEN.lo, OPEN.hi, flags | TURN);
    else this.take(Number(sure), Number(sure), flags);
  }

  back(lo: number, hi: number): void {
    if (this.lo === this.hi || (lo === 0 && hi === 0)) return;
    const { op } = this;
    const rises = op === '>' || op === '>=';
    if (rises || op === '<' || op === '<=') {
      const down = lo < 0 ? -STEEP : 0;
      const up = hi > 0 ? STEEP : 0;
      this.left.back(rises ? down : 0 - up, rises ? up : 0 - down);
      this.right.back(rises ? 0 - up : down, rises ? 0 - down : up);
    } else {
      this.left.back(-STEEP, STEEP);
      this.right.back(-STEEP, STEEP);
    }
  }
}

const least0 = ({ lo, hi }: Bound): number => (lo > 0 ? lo : hi < 0 ? -hi : 0);

/** AND, and OR where `way` is 1: the least, or the greatest, of conditions. All of them are needed. */
export class Together extends Bound {
  constructor(
    readonly parts: readonly Bound[],
    private readonly way: -1 | 1,
  ) {
    super();
  }

  forward(): void {
    let flags = 0;
    let lo = this.way > 0 ? 0 : 1;
    let hi = lo;
    const take = this.way > 0 ? Math.max : Math.min;
    for (const part of this.parts) {
      part.forward();
      flags |= part.flags;
      lo = take(lo, part.lo);
      hi = take(hi, part.hi);
    }
    this.take(lo, hi, lo === hi ? flags & FAULTS : flags);
  }

  back(lo: number, hi: number): void {
    if (this.lo === this.hi) return;
    for (const part of this.parts) part.back(Math.min(lo, 0), Math.max(hi, 0));
  }
}

export class Not extends Bound {
  readonly parts: readonly Bound[];

  constructor(private readonly of: Bound) {
    super();
    this.parts = [of];
  }

  forward(): void {
    this.of.forward();
    this.take(1 - this.of.hi, 1 - this.of.lo, this.of.flags);
  }

  back(lo: number, hi: number): void {
    this.of.back(0 - hi, 0 - lo);
  }
}

/** IF: where the box lies on one side, that branch alone; else both, and a jump between them. */
export class Choice extends Bound {
  readonly parts: readonly Bound[];
  /** Asked for as if its condition came out so; undefined again when that is done. */
  supposed: boolean | undefined;

  constructor(
    private readonly test: Bound,
    private readonly yes: Bound,
    private readonly no: Bound,
  ) {
    super();
    this.parts = [test, yes, no];
  }

  override get blamed(): readonly Bound[] {
    return this.test.flags & FAULTS ? [this.test] : this.parts;
  }

  /** Its condition came out as supposed, or supposed nothing. After `forward`. */
  get isAsSupposed(): boolean {
    const { test, supposed } = this;
    return supposed === undefined || (test.lo === test.hi && (test.lo !== 0) === supposed);
  }

  /** The branch that alone comes about; undefined where both do. After `forward`. */
  get taken(): Bound | undefined {
    const { test, yes, no } = this;
    if (this.supposed !== undefined) return this.supposed ? yes : no;
    return test.lo !== test.hi ? undefined : test.lo === 0 ? no : yes;
  }

  forward(): void {
    const { test, yes, no } = this;
    test.forward();
    const one = this.taken;
    if (one) {
      one.forward();
      this.take(one.lo, one.hi, one.flags | (test.flags & FAULTS));
      return;
    }
    yes.forward();
    no.forward();
    this.take(Math.min(yes.lo, no.lo), Math.max(yes.hi, no.hi), test.flags | yes.flags | no.flags);
  }

  back(lo: number, hi: number): void {
    const { test, yes, no } = this;
    const { taken } = this;
    if (taken) {
      taken.back(lo, hi);
      return;
    }
    const jumpLo = addDown(yes.lo, -no.hi);
    const jumpHi = addUp(yes.hi, -no.lo);
    const [down, up] = [Math.min(lo, 0), Math.max(hi, 0)];
    yes.back(down, up);
    no.back(down, up);
    test.back(productDown(lo, hi, jumpLo, jumpHi), productUp(lo, hi, jumpLo, jumpHi));
  }
}

/**
 * An expression inside a branch that its condition says something about: `x` under `x >= 0`. What it is compared with
 * narrows it there.
 */
export class Narrowed extends Bound {
  readonly parts: readonly Bound[];

  constructor(
    private readonly of: Bound,
    private readonly floor: Bound | undefined,
    private readonly ceiling: Bound | undefined,
  ) {
    super();
    this.parts = [of];
  }

  forward(): void {
    const { of, floor, ceiling } = this;
    of.forward();
    floor?.forward();
    ceiling?.forward();
    const lo = Math.max(of.lo, floor?.lo ?? Number.NEGATIVE_INFINITY);
    const hi = Math.min(of.hi, ceiling?.hi ?? Number.POSITIVE_INFINITY);
    // Nothing left: the branch does not come about, and says nothing wrong by being as wide as it was.
    if (lo <= hi) this.take(lo, hi, of.flags);
    else this.take(of.lo, of.hi, of.flags);
  }

  back(lo: number, hi: number): void {
    this.of.back(lo, hi);
  }
}
