/** Seeded draws for synthetic sheets: the same seed gives the same sheets everywhere. */
export class Draw {
  private state: number;

  constructor(seed: number) {
    this.state = seed >>> 0;
  }

  /** Uniform in [0, 1): the generator known as mulberry32. */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let t = this.state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }

  /** A generator of its own. */
  like(seed: number): Draw {
    return new Draw(seed);
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.next();
  }

  whole(low: number, high: number): number {
    return low + Math.floor(this.next() * (high - low + 1));
  }

  chance(p: number): boolean {
    return this.next() < p;
  }

  of<T>(list: readonly T[]): T {
    return list[this.whole(0, list.length - 1)] as T;
  }

  /** Exponential with mean 1. */
  wait(): number {
    return -Math.log(1 - this.next());
  }

  normal(): number {
    return Math.sqrt(2 * this.wait()) * Math.cos(2 * Math.PI * this.next());
  }
}
