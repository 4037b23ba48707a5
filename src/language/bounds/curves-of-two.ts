import { Bound, type Doubt, LOST } from './bound.ts';
import {
  divDown,
  divUp,
  productDown,
  productUp,
  quotientDown,
  quotientUp,
  wellAbove,
  wellBelow,
} from './directed.ts';

const ALL = Number.POSITIVE_INFINITY;

/** x to a power that moves: for x above zero alone. */
export class MovingPower extends Bound {
  readonly parts: readonly Bound[];

  constructor(
    private readonly of: Bound,
    private readonly power: Bound,
    private readonly doubt: Doubt,
  ) {
    super();
    this.parts = [of, power];
  }

  forward(): void {
    const { of, power } = this;
    of.forward();
    power.forward();
    if (!(of.lo > 0) && of.hi > 0) this.doubt.narrow?.(of);
    const flags = of.flags | power.flags;
    if (!(of.lo > 0)) {
      this.lose(flags | LOST);
      return;
    }
    const ends = [of.lo ** power.lo, of.lo ** power.hi, of.hi ** power.lo, of.hi ** power.hi];
    const [least, most] = [Math.min(...ends), Math.max(...ends)];
    if (!(most < ALL)) this.lose(flags | LOST);
    else this.take(Math.max(0, wellBelow(least)), wellAbove(most), flags);
  }

  back(lo: number, hi: number): void {
    const { of, power } = this;
    if (!(of.lo > 0)) {
      of.back(-ALL, ALL);
      power.back(-ALL, ALL);
      return;
    }
    const down = productDown(lo, hi, this.lo, this.hi);
    const upper = productUp(lo, hi, this.lo, this.hi);
    const inverse = [divDown(1, of.hi), divUp(1, of.lo)] as const;
    const part = [
      productDown(power.lo, power.hi, ...inverse),
      productUp(power.lo, power.hi, ...inverse),
    ] as const;
    of.back(productDown(down, upper, ...part), productUp(down, upper, ...part));
    const log = [wellBelow(Math.log(of.lo)), wellAbove(Math.log(of.hi))] as const;
    power.back(productDown(down, upper, ...log), productUp(down, upper, ...log));
  }
}

/** Angle of the point (x; y) from the x axis. */
export class Direction extends Bound {
  readonly parts: readonly Bound[];

  constructor(
    private readonly x: Bound,
    private readonly y: Bound,
  ) {
    super();
    this.parts = [x, y];
  }

  /** The box reaches the half line along which the angle jumps from half a turn to minus half a turn. */
  private get isTorn(): boolean {
    return this.x.lo <= 0 && this.y.lo <= 0 && this.y.hi >= 0;
  }

  forward(): void {
    const { x, y } = this;
    x.forward();
    y.forward();
    const flags = x.flags | y.flags;
    if (this.isTorn) {
      const isOrigin = x.hi >= 0;
      this.take(-wellAbove(Math.PI), wellAbove(Math.PI), isOrigin ? flags | LOST : flags);
      return;
    }
    const ends = [
      Math.atan2(y.lo, x.lo),
      Math.atan2(y.lo, x.hi),
      Math.atan2(y.hi, x.lo),
      Math.atan2(y.hi, x.hi),
    ];
    this.take(wellBelow(Math.min(...ends)), wellAbove(Math.max(...ends)), flags);
  }

  back(lo: number, hi: number): void {
    const { x, y } = this;
    if (this.isTorn) {
      x.back(-ALL, ALL);
      y.back(-ALL, ALL);
      return;
    }
    const least = squareDown(x) + squareDown(y);
    const most = Math.max(x.lo * x.lo, x.hi * x.hi) + Math.max(y.lo * y.lo, y.hi * y.hi);
    const [low, high] = [Math.max(0, wellBelow(least)), wellAbove(most)];
    const fall = [quotientDown(-y.hi, -y.lo, low, high), quotientUp(-y.hi, -y.lo, low, high)] as const;
    x.back(productDown(lo, hi, ...fall), productUp(lo, hi, ...fall));
    const rise = [quotientDown(x.lo, x.hi, low, high), quotientUp(x.lo, x.hi, low, high)] as const;
    y.back(productDown(lo, hi, ...rise), productUp(lo, hi, ...rise));
  }
}

const squareDown = ({ lo, hi }: Bound): number => (lo > 0 ? lo * lo : hi < 0 ? hi * hi : 0);
