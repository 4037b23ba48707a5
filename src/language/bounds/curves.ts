import { Bound, type Doubt, LOST, POLE } from './bound.ts';
import {
  divDown,
  divUp,
  down,
  mulDown,
  mulUp,
  productDown,
  productUp,
  quotientDown,
  quotientUp,
  up,
  wellAbove,
  wellBelow,
} from './directed.ts';

const ALL = Number.POSITIVE_INFINITY;
/** Below zero by less than this share of its range is rounding. */
const HAIR = 1e-15;

/** A function of one number; its slope over the box is kept from `forward` to `back`. */
abstract class Curve extends Bound {
  readonly parts: readonly Bound[];
  protected slopeLo = -ALL;
  protected slopeHi = ALL;

  constructor(
    protected readonly of: Bound,
    private readonly doubt: Doubt,
  ) {
    super();
    this.parts = [of];
  }

  /** The part reaches where the function has no value, or no bound. */
  protected reachesOut(_lo: number, _hi: number): boolean {
    return false;
  }

  forward(): void {
    this.of.forward();
    if (this.of.lo < this.of.hi && this.reachesOut(this.of.lo, this.of.hi)) this.doubt.narrow?.(this.of);
    this.slopeLo = -ALL;
    this.slopeHi = ALL;
    this.curve(this.of.lo, this.of.hi, this.of.flags);
  }

  protected abstract curve(lo: number, hi: number, flags: number): void;

  back(lo: number, hi: number): void {
    this.of.back(
      productDown(lo, hi, this.slopeLo, this.slopeHi),
      productUp(lo, hi, this.slopeLo, this.slopeHi),
    );
  }
}

export class Root extends Curve {
  protected override reachesOut(lo: number): boolean {
    return lo < 0;
  }

  protected curve(lo: number, hi: number, flags: number): void {
    if (hi < 0 || lo < -HAIR * hi) {
      this.lose(flags | LOST);
      return;
    }
    const least = lo > 0 ? down(Math.sqrt(lo)) : 0;
    const most = hi > 0 ? up(Math.sqrt(hi)) : 0;
    this.take(least, most, flags);
    this.slopeLo = most > 0 ? divDown(0.5, most) : 0;
    this.slopeHi = least > 0 ? divUp(0.5, least) : ALL;
  }
}

export class Exponential extends Curve {
  protected curve(lo: number, hi: number, flags: number): void {
    const least = Math.max(0, wellBelow(Math.exp(lo)));
    const most = wellAbove(Math.exp(hi));
    if (!(most < ALL)) {
      this.lose(flags | LOST);
      return;
    }
    this.take(least, most, flags);
    this.slopeLo = least;
    this.slopeHi = most;
  }
}

/** Logarithm; `unit` is that of e: 1, or the logarithm of e to another base. */
export class Logarithm extends Curve {
  constructor(
    of: Bound,
    doubt: Doubt,
    private readonly log: (x: number) => number,
    private readonly unit: number,
  ) {
    super(of, doubt);
  }

  protected override reachesOut(lo: number): boolean {
    return lo <= 0;
  }

  protected curve(lo: number, hi: number, flags: number): void {
    if (lo < 0 || hi <= 0) {
      this.lose(flags | LOST);
      return;
    }
    const { log, unit } = this;
    const [a, b] = lo > 0 ? [log(lo), log(hi)] : [unit > 0 ? -ALL : ALL, log(hi)];
    this.take(wellBelow(Math.min(a, b)), wellAbove(Math.max(a, b)), lo > 0 ? flags : flags | POLE);
    const [low, high] = [wellBelow(unit), wellAbove(unit)];
    this.slopeLo = quotientDown(low, high, lo, hi);
    this.slopeHi = quotientUp(low, high, lo, hi);
  }
}

const nearestToZero = (lo: number, hi: number): number => Math.max(lo, Math.min(hi, 0));

const TURN = 2 * Math.PI;

/** True where a point that comes back every `period` lies in the range, or may. */
const passes = (lo: number, hi: number, point: number, period: number): boolean => {
  const hair = 1e-12;
  return Math.floor((hi - point) / period + hair) >= Math.ceil((lo - point) / period - hair);
};

/** So large an angle that its place within a turn is not known to a double. */
const LARGE = 1e9;

const isLarge = (lo: number, hi: number): boolean => !(hi - lo < TURN) || Math.max(-lo, hi) > LARGE;

const sineDown = (lo: number, hi: number): number =>
  isLarge(lo, hi) || passes(lo, hi, -Math.PI / 2, TURN)
    ? -1
    : Math.max(-1, wellBelow(Math.min(Math.sin(lo), Math.sin(hi))));
const sineUp = (lo: number, hi: number): number =>
  isLarge(lo, hi) || passes(lo, hi, Math.PI / 2, TURN)
    ? 1
    : Math.min(1, wellAbove(Math.max(Math.sin(lo), Math.sin(hi))));
const cosineDown = (lo: number, hi: number): number =>
  isLarge(lo, hi) || passes(lo, hi, Math.PI, TURN)
    ? -1
    : Math.max(-1, wellBelow(Math.min(Math.cos(lo), Math.cos(hi))));
const cosineUp = (lo: number, hi: number): number =>
  isLarge(lo, hi) || passes(lo, hi, 0, TURN)
    ? 1
    : Math.min(1, wellAbove(Math.max(Math.cos(lo), Math.cos(hi))));

export class Sine extends Curve {
  protected curve(lo: number, hi: number, flags: number): void {
    this.take(sineDown(lo, hi), sineUp(lo, hi), flags);
    this.slopeLo = cosineDown(lo, hi);
    this.slopeHi = cosineUp(lo, hi);
  }
}

export class Cosine extends Curve {
  protected curve(lo: number, hi: number, flags: number): void {
    this.take(cosineDown(lo, hi), cosineUp(lo, hi), flags);
    this.slopeLo = 0 - sineUp(lo, hi);
    this.slopeHi = 0 - sineDown(lo, hi);
  }
}

export class Tangent extends Curve {
  protected curve(lo: number, hi: number, flags: number): void {
    if (isLarge(lo, hi) || passes(lo, hi, Math.PI / 2, Math.PI)) {
      this.take(-ALL, ALL, flags | POLE);
      return;
    }
    const least = wellBelow(Math.tan(lo));
    const most = wellAbove(Math.tan(hi));
    this.take(least, most, flags);
    const flat = nearestToZero(least, most);
    this.slopeLo = down(1 + mulDown(flat, flat));
    this.slopeHi = up(1 + Math.max(mulUp(least, least), mulUp(most, most)));
  }
}

/** ASIN and, falling, ACOS. */
export class ArcSine extends Curve {
  constructor(
    of: Bound,
    doubt: Doubt,
    private readonly isCosine: boolean,
  ) {
    super(of, doubt);
  }

  protected override reachesOut(lo: number, hi: number): boolean {
    return lo < -1 || hi > 1;
  }

  protected curve(lo: number, hi: number, flags: number): void {
    if (lo < -1 - HAIR || hi > 1 + HAIR) {
      this.lose(flags | LOST);
      return;
    }
    const [a, b] = [Math.max(-1, lo), Math.min(1, hi)];
    const steep = (x: number): number => (Math.abs(x) < 1 ? 1 / Math.sqrt((1 - x) * (1 + x)) : ALL);
    const flat = nearestToZero(a, b);
    const least = wellBelow(steep(flat));
    const most = wellAbove(Math.max(steep(a), steep(b)));
    if (this.isCosine) {
      this.take(wellBelow(Math.acos(b)), wellAbove(Math.acos(a)), flags);
      this.slopeLo = 0 - most;
      this.slopeHi = 0 - least;
    } else {
      this.take(wellBelow(Math.asin(a)), wellAbove(Math.asin(b)), flags);
      this.slopeLo = least;
      this.slopeHi = most;
    }
  }
}

export class ArcTangent extends Curve {
  protected curve(lo: number, hi: number, flags: number): void {
    this.take(wellBelow(Math.atan(lo)), wellAbove(Math.atan(hi)), flags);
    const flat = nearestToZero(lo, hi);
    const far = Math.max(-lo, hi);
    this.slopeLo = wellBelow(1 / (1 + far * far));
    this.slopeHi = wellAbove(1 / (1 + flat * flat));
  }
}

/** x to a power that is known. */
export class Power extends Curve {
  constructor(
    of: Bound,
    doubt: Doubt,
    private readonly power: number,
  ) {
    super(of, doubt);
  }

  protected override reachesOut(lo: number, hi: number): boolean {
    return lo <= 0 && hi >= 0 && (this.power < 0 || !Number.isInteger(this.power));
  }

  protected curve(lo: number, hi: number, flags: number): void {
    const { power } = this;
    if (power === 0) {
      this.take(1, 1, flags);
      this.slopeLo = this.slopeHi = 0;
      return;
    }
    const isWhole = Number.isInteger(power);
    if (!isWhole && lo < (hi > 0 ? -HAIR * hi : 0)) {
      this.lose(flags | LOST);
      return;
    }
    const a = isWhole ? lo : Math.max(0, lo);
    const b = isWhole ? hi : Math.max(0, hi);
    if (power < 0 && a === 0 && b === 0) {
      this.lose(flags | LOST);
      return;
    }
    const open = power < 0 && a <= 0 && b >= 0;
    const [least, most] = [powerDown(a, b, power), powerUp(a, b, power)];
    // What is beyond a double has no value.
    if (!open && !(most - least < ALL) && hi - lo < ALL) {
      this.lose(flags | LOST);
      return;
    }
    this.take(least, most, open ? flags | POLE : flags);
    const less = power - 1;
    const [low, high] = [powerDown(a, b, less), powerUp(a, b, less)];
    this.slopeLo = productDown(power, power, low, high);
    this.slopeHi = productUp(power, power, low, high);
  }
}

/** Lower end of [a, b] to a power; `a` is not below zero unless the power is whole. */
const powerDown = (a: number, b: number, n: number): number => {
  if (n === 0) return 1;
  const isEven = n % 2 === 0;
  if (a >= 0) return Math.max(0, wellBelow(n > 0 ? a ** n : b ** n));
  if (b <= 0) {
    if (isEven) return Math.max(0, wellBelow(n > 0 ? b ** n : a ** n));
    return n > 0 ? wellBelow(a ** n) : b === 0 ? -ALL : wellBelow(b ** n);
  }
  if (n > 0) return isEven ? 0 : wellBelow(a ** n);
  return isEven ? Math.max(0, wellBelow(Math.max(-a, b) ** n)) : -ALL;
};

const powerUp = (a: number, b: number, n: number): number => {
  if (n === 0) return 1;
  const isEven = n % 2 === 0;
  if (a >= 0) return n > 0 ? wellAbove(b ** n) : a === 0 ? ALL : wellAbove(a ** n);
  if (b <= 0) {
    if (isEven) return n > 0 ? wellAbove(a ** n) : b === 0 ? ALL : wellAbove(b ** n);
    return Math.min(0, wellAbove(n > 0 ? b ** n : a ** n));
  }
  if (n > 0) return isEven ? wellAbove(Math.max(-a, b) ** n) : wellAbove(b ** n);
  return ALL;
};
