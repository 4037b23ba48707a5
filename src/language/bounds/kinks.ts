import { Bound } from './bound.ts';
import { addDown, addUp, divDown, divUp, mulDown, mulUp, productDown, productUp } from './directed.ts';

/** ABS */
export class Size extends Bound {
  readonly parts: readonly Bound[];

  constructor(private readonly of: Bound) {
    super();
    this.parts = [of];
  }

  forward(): void {
    const { of } = this;
    of.forward();
    this.flags = of.flags;
    this.lo = of.lo > 0 ? of.lo : of.hi < 0 ? 0 - of.hi : 0;
    this.hi = Math.max(0 - of.lo, of.hi);
  }

  back(lo: number, hi: number): void {
    const { of } = this;
    if (of.lo >= 0) of.back(lo, hi);
    else if (of.hi <= 0) of.back(0 - hi, 0 - lo);
    else {
      const most = Math.max(hi, 0 - lo);
      of.back(0 - most, most);
    }
  }
}

abstract class Many extends Bound {
  constructor(readonly parts: readonly Bound[]) {
    super();
  }

  protected go(): void {
    let flags = 0;
    for (const part of this.parts) {
      part.forward();
      flags |= part.flags;
    }
    this.flags = flags;
  }
}

/** MAX, and MIN where `way` is -1. Those that cannot be the one taken have no slope. */
export class Extreme extends Many {
  constructor(
    parts: readonly Bound[],
    readonly way: -1 | 1,
  ) {
    super(parts);
  }

  forward(): void {
    this.go();
    const [first] = this.parts;
    if (!first) return;
    let { lo, hi } = first;
    const take = this.way > 0 ? Math.max : Math.min;
    for (const part of this.parts) {
      lo = take(lo, part.lo);
      hi = take(hi, part.hi);
    }
    this.lo = lo;
    this.hi = hi;
  }

  back(lo: number, hi: number): void {
    const { parts, way } = this;
    const taken = parts.filter((part) => (way > 0 ? part.hi >= this.lo : part.lo <= this.hi));
    const sole = taken.find((part) =>
      taken.every((other) => other === part || (way > 0 ? part.lo >= other.hi : part.hi <= other.lo)),
    );
    if (sole) {
      sole.back(lo, hi);
      return;
    }
    const [down, up] = [Math.min(lo, 0), Math.max(hi, 0)];
    for (const part of taken) part.back(down, up);
  }
}

/** MEDIAN: rises, or stands still, with each of its values. */
export class Middle extends Many {
  forward(): void {
    this.go();
    this.lo = middle(
      this.parts.map((part) => part.lo),
      addDown,
    );
    this.hi = middle(
      this.parts.map((part) => part.hi),
      addUp,
    );
  }

  back(lo: number, hi: number): void {
    const { parts } = this;
    const half = parts.length >> 1;
    const ranked = (of: (part: Bound) => number, at: number): number =>
      parts.map(of).sort((a, b) => a - b)[at] as number;
    // What lies wholly beyond those in the middle never is one of them.
    const below = ranked((part) => part.lo, parts.length % 2 === 1 ? half : half - 1);
    const above = ranked((part) => part.hi, half);
    const taken = parts.filter((part) => part.hi >= below && part.lo <= above);
    const isSole = taken.length === 1 && parts.length % 2 === 1;
    const [down, up] = isSole ? [lo, hi] : [Math.min(lo, 0), Math.max(hi, 0)];
    for (const part of taken) part.back(down, up);
  }
}

const middle = (values: readonly number[], add: (a: number, b: number) => number): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const above = sorted[half] as number;
  return sorted.length % 2 === 1 ? above : add(sorted[half - 1] as number, above) / 2;
};

/** SUM, and AVERAGE by its `share`. */
export class Total extends Many {
  private readonly low: number;
  private readonly high: number;

  constructor(parts: readonly Bound[], isMean: boolean) {
    super(parts);
    this.low = isMean ? divDown(1, parts.length) : 1;
    this.high = isMean ? divUp(1, parts.length) : 1;
  }

  forward(): void {
    this.go();
    let [lo, hi] = [0, 0];
    for (const part of this.parts) {
      lo = addDown(lo, part.lo);
      hi = addUp(hi, part.hi);
    }
    this.lo = mulDown(lo, lo < 0 ? this.high : this.low);
    this.hi = mulUp(hi, hi < 0 ? this.low : this.high);
  }

  back(lo: number, hi: number): void {
    const down = productDown(lo, hi, this.low, this.high);
    const up = productUp(lo, hi, this.low, this.high);
    for (const part of this.parts) part.back(down, up);
  }
}
