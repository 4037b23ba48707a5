import type { Rate } from './limits.ts';

/** Counts messages, or bytes, against a rate (a token bucket, by the clock that never jumps). */
export class Bucket {
  private level: number;
  private at = performance.now();

  constructor(private readonly rate: Rate) {
    this.level = rate.atOnce;
  }

  /** Nothing has been taken of late. */
  get full(): boolean {
    this.fill();
    return this.level >= this.rate.atOnce;
  }

  /** @returns milliseconds to wait before more is taken; 0 where there is room. */
  take(count = 1): number {
    this.fill();
    this.level -= count;
    return this.level >= 0 ? 0 : (-this.level / this.rate.perSecond) * 1000;
  }

  private fill(): void {
    const now = performance.now();
    this.level = Math.min(this.rate.atOnce, this.level + ((now - this.at) / 1000) * this.rate.perSecond);
    this.at = now;
  }
}
