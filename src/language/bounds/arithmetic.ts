import { Bound, type Doubt, POLE } from './bound.ts';
import {
  addDown,
  addUp,
  mulDown,
  mulUp,
  productDown,
  productUp,
  quotientDown,
  quotientUp,
} from './directed.ts';

abstract class Pair extends Bound {
  readonly parts: readonly Bound[];

  constructor(
    protected readonly left: Bound,
    protected readonly right: Bound,
  ) {
    super();
    this.parts = [left, right];
  }
}

export class Sum extends Pair {
  forward(): void {
    const { left: x, right: y } = this;
    x.forward();
    y.forward();
    this.lo = addDown(x.lo, y.lo);
    this.hi = addUp(x.hi, y.hi);
    this.flags = x.flags | y.flags;
  }

  back(lo: number, hi: number): void {
    this.left.back(lo, hi);
    this.right.back(lo, hi);
  }
}

export class Difference extends Pair {
  forward(): void {
    const { left: x, right: y } = this;
    x.forward();
    y.forward();
    this.lo = addDown(x.lo, -y.hi);
    this.hi = addUp(x.hi, -y.lo);
    this.flags = x.flags | y.flags;
  }

  back(lo: number, hi: number): void {
    this.left.back(lo, hi);
    this.right.back(0 - hi, 0 - lo);
  }
}

export class Product extends Pair {
  forward(): void {
    const { left: x, right: y } = this;
    x.forward();
    y.forward();
    this.lo = productDown(x.lo, x.hi, y.lo, y.hi);
    this.hi = productUp(x.lo, x.hi, y.lo, y.hi);
    this.flags = x.flags | y.flags;
  }

  back(lo: number, hi: number): void {
    const { left: x, right: y } = this;
    x.back(productDown(lo, hi, y.lo, y.hi), productUp(lo, hi, y.lo, y.hi));
    y.back(productDown(lo, hi, x.lo, x.hi), productUp(lo, hi, x.lo, x.hi));
  }
}

export class Quotient extends Pair {
  constructor(
    left: Bound,
    right: Bound,
    private readonly doubt: Doubt,
  ) {
    super(left, right);
  }

  /** Enclosure of 1 over the divisor. */
  private inverseLo = 0;
  private inverseHi = 0;

  override get blamed(): readonly Bound[] {
    return [this.right];
  }

  forward(): void {
    const { left: x, right: y } = this;
    x.forward();
    y.forward();
    if (y.lo <= 0 && y.hi >= 0 && y.lo < y.hi) this.doubt.narrow?.(y);
    const flags = x.flags | y.flags;
    if (y.lo > 0 || y.hi < 0) this.flags = flags;
    else {
      this.flags = flags | POLE;
      if ((y.lo < 0 && y.hi > 0) || y.lo === y.hi) {
        this.inverseLo = this.lo = Number.NEGATIVE_INFINITY;
        this.inverseHi = this.hi = Number.POSITIVE_INFINITY;
        return;
      }
    }
    this.lo = quotientDown(x.lo, x.hi, y.lo, y.hi);
    this.hi = quotientUp(x.lo, x.hi, y.lo, y.hi);
    this.inverseLo = quotientDown(1, 1, y.lo, y.hi);
    this.inverseHi = quotientUp(1, 1, y.lo, y.hi);
  }

  back(lo: number, hi: number): void {
    const { inverseLo, inverseHi } = this;
    const down = productDown(lo, hi, inverseLo, inverseHi);
    const up = productUp(lo, hi, inverseLo, inverseHi);
    this.left.back(down, up);
    // 0 over what may be 0 is still no number.
    const isOpen = (this.flags & POLE) !== 0;
    const valueLo = isOpen ? Math.min(this.lo, 0) : this.lo;
    const valueHi = isOpen ? Math.max(this.hi, 0) : this.hi;
    this.right.back(0 - productUp(down, up, valueLo, valueHi), 0 - productDown(down, up, valueLo, valueHi));
  }
}

/** A number times itself: never below zero, which the product of two equal ranges would not know. */
export class Square extends Bound {
  readonly parts: readonly Bound[];

  constructor(private readonly of: Bound) {
    super();
    this.parts = [of];
  }

  forward(): void {
    const { of } = this;
    of.forward();
    const { lo, hi } = of;
    this.flags = of.flags;
    this.lo = lo > 0 ? mulDown(lo, lo) : hi < 0 ? mulDown(hi, hi) : 0;
    this.hi = Math.max(mulUp(lo, lo), mulUp(hi, hi));
  }

  back(lo: number, hi: number): void {
    const { of } = this;
    const [a, b] = [2 * of.lo, 2 * of.hi];
    of.back(productDown(lo, hi, a, b), productUp(lo, hi, a, b));
  }
}

export class Negative extends Bound {
  readonly parts: readonly Bound[];

  constructor(private readonly of: Bound) {
    super();
    this.parts = [of];
  }

  forward(): void {
    this.of.forward();
    this.take(0 - this.of.hi, 0 - this.of.lo, this.of.flags);
  }

  back(lo: number, hi: number): void {
    this.of.back(0 - hi, 0 - lo);
  }
}

/** A number times a constant. */
export class Scaled extends Bound {
  readonly parts: readonly Bound[];

  constructor(
    private readonly of: Bound,
    /** Enclosure of the constant. */
    private readonly low: number,
    private readonly high: number,
  ) {
    super();
    this.parts = [of];
  }

  forward(): void {
    const { of, low, high } = this;
    of.forward();
    this.take(productDown(of.lo, of.hi, low, high), productUp(of.lo, of.hi, low, high), of.flags);
  }

  back(lo: number, hi: number): void {
    this.of.back(productDown(lo, hi, this.low, this.high), productUp(lo, hi, this.low, this.high));
  }
}
