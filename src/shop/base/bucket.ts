import type { Rate } from './limits.ts';

/** Counts messages against a rate (a token bucket, by the clock that never jumps). */
export class Bucket {
  private level: number;
  private at = performance.now();

  constructor(private readonly rate: Rate) {
    this.level = rate.atOnce;
  }

  /** Takes one. @returns milliseconds to wait before the next is taken; 0 where there is room. */
  take(): number {
    const now = performance.now();
    this.level = Math.min(this.rate.atOnce, this.level + ((now - this.at) / 1000) * this.rate.perSecond);
    this.at = now;
    this.level -= 1;
    return this.level >= 0 ? 0 : (-this.level / this.rate.perSecond) * 1000;
  }
}
