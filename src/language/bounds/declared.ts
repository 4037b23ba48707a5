import type { Motion, Movement } from '../../../cells/record/cell.ts';
import type { Computable } from '../compile/evaluate.ts';
import { Bound, LOST, MUTE, TURN } from './bound.ts';

const ALL = Number.POSITIVE_INFINITY;
const NONE = Number.NEGATIVE_INFINITY;
/** What a function rounds on its way, as a share of its value. */
const HAIR = 1e-13;

/** An argument: a text, or a number that may move. */
export type Argument = string | Bound;

/**
 * A function that says of itself how it moves, or one whose arguments do not move at all; any other has no bounds once
 * one of them does.
 */
export class Declared extends Bound {
  override get isSlow(): boolean {
    return this.movement?.bounds !== undefined;
  }

  readonly parts: readonly Bound[];
  /** By argument that is a number: the sign of its slope over the box. */
  private readonly signs: Float64Array;
  private readonly values: (number | string)[];
  private readonly at: readonly number[];

  constructor(
    args: readonly Argument[],
    private readonly fn: Computable | undefined,
    private readonly movement: Movement | undefined,
    /** How it moves with each argument; undefined for a text, or where nothing is said. */
    private readonly motions: readonly (Motion | undefined)[],
  ) {
    super();
    this.values = args.map((arg) => (typeof arg === 'string' ? arg : 0));
    this.at = args.flatMap((arg, i) => (typeof arg === 'string' ? [] : [i]));
    this.parts = args.filter((arg) => typeof arg !== 'string');
    this.signs = new Float64Array(this.parts.length).fill(Number.NaN);
  }

  forward(): void {
    let flags = 0;
    let moves = false;
    let wide = false;
    for (const part of this.parts) {
      part.forward();
      flags |= part.flags;
      if (part.lo !== part.hi) moves = true;
      if (!(part.hi - part.lo < ALL)) wide = true;
    }
    this.signs.fill(Number.NaN);
    if (!moves && !wide) this.still(flags);
    else if (this.movement?.bounds) this.own(this.movement.bounds, flags);
    else if (this.movement?.moves === undefined) this.lose(flags | MUTE);
    else if (wide) this.lose(flags | LOST);
    else this.corners(flags);
  }

  private compute(): number | undefined {
    const result = this.fn?.compute(...(this.values as never[]));
    const value = typeof result === 'object' || result === undefined ? Number.NaN : Number(result);
    return Number.isFinite(value) ? value : undefined;
  }

  private still(flags: number): void {
    this.parts.forEach((part, i) => {
      this.values[this.at[i] as number] = part.lo;
    });
    const value = this.compute();
    this.signs.fill(0);
    if (value === undefined) this.lose(flags | LOST);
    else this.take(value, value, flags);
  }

  private own(bounds: NonNullable<Movement['bounds']>, flags: number): void {
    const args = this.values.slice() as (string | readonly [number, number])[];
    this.parts.forEach((part, i) => {
      args[this.at[i] as number] = [part.lo, part.hi];
    });
    const found = bounds(...args);
    if ('message' in found) this.lose(flags | LOST);
    else this.take(found[0], found[1], found[0] !== found[1] && this.movement?.steps ? flags | TURN : flags);
    if (this.lo === this.hi) this.signs.fill(0);
  }

  /** Values at the corners that may be extreme: arguments that rise or fall stand at the end that is. */
  private corners(flags: number): void {
    const free = this.parts.flatMap((part, i) =>
      part.lo !== part.hi && this.motionOf(i) === 'either way' ? [i] : [],
    );
    const lows: number[] = [];
    const highs: number[] = [];
    for (let corner = 0; corner < 2 ** free.length; corner++) {
      const low = this.at1(-1, free, corner);
      const high = this.at1(1, free, corner);
      if (low === undefined || high === undefined) {
        this.lose(flags | LOST);
        return;
      }
      lows.push(low);
      highs.push(high);
    }
    const inside = this.jumpsInside();
    if (inside === undefined) {
      this.lose(flags | LOST);
      return;
    }
    const least = Math.min(...lows, ...inside);
    const most = Math.max(...highs, ...inside);
    if (least === most) this.take(least, most, flags);
    else {
      const hair = HAIR * Math.max(Math.abs(least), Math.abs(most));
      this.take(least - hair, most + hair, this.movement?.steps || inside.length > 0 ? flags | TURN : flags);
    }
    this.directions(free, lows, highs, inside.length > 0);
  }

  private motionOf(part: number): Motion | undefined {
    return this.motions[this.at[part] as number];
  }

  private at1(way: -1 | 1, free: readonly number[], corner: number): number | undefined {
    this.parts.forEach((part, i) => {
      const motion = this.motionOf(i);
      const bit = free.indexOf(i);
      const isHigh = bit >= 0 ? (corner & (1 << bit)) !== 0 : (motion === 'rising') === way > 0;
      this.values[this.at[i] as number] = isHigh ? part.hi : part.lo;
    });
    return this.compute();
  }

  /** Values on both sides of every jump within the box; undefined where there is none to be had. */
  private jumpsInside(): number[] | undefined {
    const { jumps } = this.movement ?? {};
    const [part] = this.parts;
    if (!jumps || !part) return [];
    const values: number[] = [];
    for (const at of jumps(...(this.values.filter((one) => typeof one === 'string') as string[]))) {
      if (at < part.lo - HAIR || at > part.hi) continue;
      // Tables round to a nanometre before they look.
      for (const beside of [at - 2e-9, at, at + 2e-9]) {
        this.values[this.at[0] as number] = Math.min(part.hi, Math.max(part.lo, beside));
        const value = this.compute();
        if (value === undefined) return undefined;
        values.push(value);
      }
    }
    return values;
  }

  /** Which way the value goes with each argument; with those that go either way, where all corners agree. */
  private directions(
    free: readonly number[],
    lows: readonly number[],
    highs: readonly number[],
    jumps: boolean,
  ): void {
    this.parts.forEach((part, i) => {
      const motion = this.motionOf(i);
      if (part.lo === part.hi || this.lo === this.hi) this.signs[i] = 0;
      else if (jumps || motion === undefined) this.signs[i] = Number.NaN;
      else if (motion !== 'either way') this.signs[i] = motion === 'rising' ? 1 : -1;
      else {
        const bit = 1 << free.indexOf(i);
        let rises = true;
        let falls = true;
        // Only where nothing else stands at two ends at once do the corners of low and high agree.
        if (free.length < this.parts.filter(({ lo, hi }) => lo !== hi).length) rises = falls = false;
        for (let corner = 0; corner < lows.length; corner++) {
          if (corner & bit) continue;
          if ((lows[corner | bit] as number) < (lows[corner] as number)) rises = false;
          if ((highs[corner | bit] as number) < (highs[corner] as number)) rises = false;
          if ((lows[corner | bit] as number) > (lows[corner] as number)) falls = false;
          if ((highs[corner | bit] as number) > (highs[corner] as number)) falls = false;
        }
        this.signs[i] = rises ? 1 : falls ? -1 : Number.NaN;
      }
    });
  }

  back(lo: number, hi: number): void {
    if (lo === 0 && hi === 0) return;
    this.parts.forEach((part, i) => {
      const sign = this.signs[i] as number;
      if (sign === 0) return;
      if (Number.isNaN(sign)) part.back(NONE, ALL);
      else {
        const [down, up] = [lo < 0 ? NONE : 0, hi > 0 ? ALL : 0];
        if (sign > 0) part.back(down, up);
        else part.back(0 - up, 0 - down);
      }
    });
  }
}
