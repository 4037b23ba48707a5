import { type Bound, FAULTS, LOST, type Port } from '../../language/bounds/bound.ts';
import { Declared } from '../../language/bounds/declared.ts';
import { addDown, addUp, productDown, productUp } from '../../language/bounds/directed.ts';
import type { Enclosure } from '../../language/bounds/enclose.ts';
import type { Grid } from '../network/grid.ts';
import type { Row } from '../network/layout.ts';
import { forwardOver } from './narrow.ts';

const ALL = Number.POSITIVE_INFINITY;

/** A row on the way from the sources to the one asked about. */
interface Step {
  row: Row;
  enclosure: Enclosure | undefined;
  /** By port: which step stands behind it; -1 for a row without sources. */
  uses: Int32Array;
  lo: number;
  hi: number;
  middleLo: number;
  middleHi: number;
  flags: number;
  /** The same with every source in the middle. */
  middleFlags: number;
  /** Slopes in the sources that are not pinned, low and high in turn; undefined where none of these reaches the row. */
  slopes: Float64Array | undefined;
}

/** What a row comes to over one part of the box. */
export interface Part {
  lo: number;
  hi: number;
  middleLo: number;
  middleHi: number;
  flags: number;
  /** There is no value in the middle of it. */
  isLost: boolean;
  slopes: Float64Array;
}

/** One row with all it depends on, to be enclosed over one part of the box after another. */
export class Cone {
  private readonly steps: readonly Step[];
  /** Steps that the free sources reach, but for these sources themselves. */
  private reached: Step[] = [];
  private free: Step[] = [];

  constructor(
    row: Row,
    private readonly grid: Grid,
  ) {
    const all = new Set<Row>([row]);
    for (const one of all)
      if (one.source === undefined) for (const used of one.uses) if (used.bound) all.add(used);
    const rows = [...all].sort((a, b) => a.place - b.place);
    const places = new Map(rows.map((one, place) => [one, place]));
    this.steps = rows.map((one) => ({
      row: one,
      enclosure: one.source === undefined ? one.bound?.enclosure : undefined,
      uses:
        one.source === undefined
          ? Int32Array.from(one.uses, (used) => places.get(used) ?? -1)
          : new Int32Array(0),
      lo: 0,
      hi: 0,
      middleLo: 0,
      middleHi: 0,
      flags: 0,
      middleFlags: 0,
      slopes: undefined,
    }));
  }

  /** A function that the free sources reach takes long to enclose. */
  get isSlow(): boolean {
    return this.reached.some(({ enclosure }) => enclosure !== undefined && hasSlow(enclosure.root));
  }

  /** Pins every source but those at `free` to the given value, and works out what depends on these alone. */
  pin(free: readonly number[], at: (source: number) => number): void {
    this.free = [];
    this.reached = [];
    for (const step of this.steps) {
      const { row } = step;
      if (row.source !== undefined) {
        const place = free.indexOf(row.source);
        step.slopes = undefined;
        if (place >= 0) {
          step.slopes = new Float64Array(2 * free.length);
          step.slopes[2 * place] = 1;
          step.slopes[2 * place + 1] = 1;
          this.free[place] = step;
        } else {
          const value = at(row.source);
          const known = Number.isFinite(value);
          step.lo = step.middleLo = known ? value : -ALL;
          step.hi = step.middleHi = known ? value : ALL;
          step.flags = step.middleFlags = known ? 0 : LOST;
        }
        continue;
      }
      let moves = false;
      for (const place of step.uses) if (place >= 0 && this.steps[place]?.slopes) moves = true;
      step.slopes = moves ? new Float64Array(2 * free.length) : undefined;
      if (moves) this.reached.push(step);
      else this.middle(step, true);
    }
  }

  /** Encloses the row over the part of the box in which the free sources lie between these ends. */
  over(low: Float64Array, high: Float64Array): Part {
    for (let i = 0; i < this.free.length; i++) {
      const step = this.free[i] as Step;
      step.lo = low[i] as number;
      step.hi = high[i] as number;
      step.middleLo = step.middleHi = middleOf(step.lo, step.hi);
      step.flags = step.middleFlags = 0;
    }
    for (const step of this.reached) {
      const flags = this.middle(step, false);
      this.box(step, (flags & FAULTS) === 0);
    }
    const last = this.steps.at(-1) as Step;
    return {
      lo: last.lo,
      hi: last.hi,
      middleLo: last.middleLo,
      middleHi: last.middleHi,
      flags: last.flags,
      isLost: (last.middleFlags & LOST) !== 0,
      slopes: last.slopes ?? new Float64Array(2 * this.free.length),
    };
  }

  /** Works a row out with every source in the middle of the part; `isAll` where nothing in it moves. */
  private middle(step: Step, isAll: boolean): number {
    const { enclosure } = step;
    if (!enclosure) return LOST;
    this.load(step, enclosure, true);
    enclosure.root.forward();
    const { lo, hi, flags } = enclosure.root;
    step.middleLo = lo;
    step.middleHi = hi;
    if (isAll) {
      const isLost = (flags & LOST) !== 0;
      step.lo = isLost ? -ALL : lo;
      step.hi = isLost ? ALL : hi;
      step.flags = flags;
    }
    step.middleFlags = flags;
    return flags;
  }

  private box(step: Step, isKnown: boolean): void {
    const { enclosure, slopes } = step;
    if (!enclosure || !slopes) return;
    const { root, ports } = enclosure;
    forwardOver(
      enclosure,
      (isMiddle) => this.load(step, enclosure, isMiddle),
      () => {
        this.gather(step, ports);
        return this.reach(slopes);
      },
    );
    for (const port of ports) port.dlo = port.dhi = 0;
    root.back(1, 1);
    this.gather(step, ports);
    let { lo, hi } = root;
    if (isKnown) {
      const [down, up] = this.reach(slopes);
      const [below, above] = [addDown(step.middleLo, down), addUp(step.middleHi, up)];
      if (below > lo && below <= hi) lo = below;
      if (above < hi && above >= lo) hi = above;
    }
    const whole = step.row.bound;
    if (whole && whole.lo > lo && whole.lo <= hi) lo = whole.lo;
    if (whole && whole.hi < hi && whole.hi >= lo) hi = whole.hi;
    const isLost = (root.flags & LOST) !== 0;
    step.lo = isLost ? -ALL : lo;
    step.hi = isLost ? ALL : hi;
    step.flags = root.flags;
  }

  /** Slopes in the free sources, from those that stand at the ports. */
  private gather({ uses, slopes }: Step, ports: readonly Port[]): void {
    if (!slopes) return;
    slopes.fill(0);
    for (let i = 0; i < uses.length; i++) {
      const inner = this.steps[uses[i] as number]?.slopes;
      const { dlo, dhi } = ports[i] as Port;
      if (!inner || (dlo === 0 && dhi === 0)) continue;
      for (let at = 0; at < slopes.length; at += 2) {
        const [low, high] = [inner[at] as number, inner[at + 1] as number];
        if (low === 0 && high === 0) continue;
        slopes[at] = addDown(slopes[at] as number, productDown(dlo, dhi, low, high));
        slopes[at + 1] = addUp(slopes[at + 1] as number, productUp(dlo, dhi, low, high));
      }
    }
  }

  private reach(slopes: Float64Array): readonly [down: number, up: number] {
    let below = 0;
    let above = 0;
    for (let i = 0; i < this.free.length; i++) {
      const source = this.free[i] as Step;
      const down = addDown(source.lo, -source.middleHi);
      const up = addUp(source.hi, -source.middleLo);
      const [low, high] = [slopes[2 * i] as number, slopes[2 * i + 1] as number];
      below = addDown(below, productDown(low, high, down, up));
      above = addUp(above, productUp(low, high, down, up));
    }
    return [below, above];
  }

  private load(step: Step, { ports }: Enclosure, isMiddle: boolean): void {
    const { uses, row } = step;
    for (let i = 0; i < uses.length; i++) {
      const port = ports[i] as Port;
      const behind = this.steps[uses[i] as number];
      if (behind) {
        port.lo = isMiddle ? behind.middleLo : behind.lo;
        port.hi = isMiddle ? behind.middleHi : behind.hi;
        port.flags = (isMiddle ? behind.middleFlags : behind.flags) & FAULTS;
        continue;
      }
      const value = this.grid.nominal((row.uses[i] as Row).slot);
      const known = typeof value !== 'object' && value !== undefined;
      port.lo = known ? Number(value) : -ALL;
      port.hi = known ? Number(value) : ALL;
      port.flags = known ? 0 : LOST;
    }
  }
}

const hasSlow = (node: Bound): boolean =>
  (node instanceof Declared && node.isSlow) || node.parts.some(hasSlow);

export const middleOf = (low: number, high: number): number => Math.min(high, low + (high - low) / 2);
