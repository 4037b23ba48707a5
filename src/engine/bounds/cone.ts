import { type Bound, FAULTS, LOST, type Port, TURN } from '../../language/bounds/bound.ts';
import { Choice } from '../../language/bounds/branches.ts';
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
  /** The sources that are not pinned and reach the row, by their places among these. */
  free: readonly number[];
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
  /** What it comes to in its middle does come about: it was enclosed with nothing supposed that is not so there. */
  isReal: boolean;
  slopes: Float64Array;
}

/** One row with all it depends on, to be enclosed over one part of the box after another. */
export class Cone {
  private readonly steps: readonly Step[];
  /** Steps that the free sources reach, but for these sources themselves. */
  private reached: Step[] = [];
  private free: Step[] = [];
  /**
   * Conditions taken to come out so all over the part. What it comes to where they do is then enclosed, and what it would come
   * to elsewhere: no jump is left.
   */
  supposed: ReadonlyMap<Choice, boolean> = new Map();
  /** How far each free source can go from the middle of the part, down and up in turn. */
  private room = new Float64Array(0);

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
      free: [],
    }));
  }

  /** A function that the free sources reach takes long to enclose. */
  get isSlow(): boolean {
    return this.reached.some(({ enclosure }) => enclosure !== undefined && hasSlow(enclosure.root));
  }

  /** Conditions that come out both ways in the part last looked at. */
  get undecided(): Choice[] {
    return this.reached.flatMap(({ enclosure }) => (enclosure ? undecidedIn(enclosure.root) : []));
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
          step.free = [place];
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
      const reaching = new Set<number>();
      for (const place of step.uses) {
        const behind = this.steps[place];
        if (behind?.slopes) for (const one of behind.free) reaching.add(one);
      }
      step.slopes = reaching.size > 0 ? new Float64Array(2 * free.length) : undefined;
      step.free = [...reaching].sort((a, b) => a - b);
      if (reaching.size > 0) this.reached.push(step);
      else this.middle(step, true);
    }
    this.room = new Float64Array(2 * free.length);
  }

  /** Encloses the row over the part of the box in which the free sources lie between these ends. */
  over(low: Float64Array, high: Float64Array): Part {
    for (let i = 0; i < this.free.length; i++) {
      const step = this.free[i] as Step;
      step.lo = low[i] as number;
      step.hi = high[i] as number;
      step.middleLo = step.middleHi = middleOf(step.lo, step.hi);
      step.flags = step.middleFlags = 0;
      this.room[2 * i] = addDown(step.lo, -step.middleHi);
      this.room[2 * i + 1] = addUp(step.hi, -step.middleLo);
    }
    const supposed = [...this.supposed.keys()];
    for (const [choice, outcome] of this.supposed) choice.supposed = outcome;
    let isReal = true;
    for (const step of this.reached) {
      const flags = this.middle(step, false);
      for (const choice of supposed) if (!choice.isAsSupposed) isReal = false;
      this.box(step, (flags & FAULTS) === 0);
    }
    for (const choice of supposed) choice.supposed = undefined;
    const last = this.steps.at(-1) as Step;
    return {
      lo: last.lo,
      hi: last.hi,
      middleLo: last.middleLo,
      middleHi: last.middleHi,
      flags: last.flags,
      isLost: isReal && (last.middleFlags & LOST) !== 0,
      isReal,
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
        return this.reach(step.free, slopes);
      },
    );
    for (const port of ports) port.dlo = port.dhi = 0;
    root.back(1, 1);
    this.gather(step, ports);
    let { lo, hi } = root;
    if (isKnown) {
      const [down, up] = this.reach(step.free, slopes);
      const [below, above] = [addDown(step.middleLo, down), addUp(step.middleHi, up)];
      if (below > lo && below <= hi) lo = below;
      if (above < hi && above >= lo) hi = above;
    }
    // What is supposed may lead beyond what the row can really be, and has to, for its ways to hold.
    const whole = this.supposed.size > 0 ? undefined : step.row.bound;
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
      const behind = this.steps[uses[i] as number];
      const inner = behind?.slopes;
      const { dlo, dhi } = ports[i] as Port;
      if (!inner || (dlo === 0 && dhi === 0)) continue;
      for (const source of behind.free) {
        const at = 2 * source;
        const low = inner[at] as number;
        const high = inner[at + 1] as number;
        if (low === 0 && high === 0) continue;
        slopes[at] = addDown(slopes[at] as number, productDown(dlo, dhi, low, high));
        slopes[at + 1] = addUp(slopes[at + 1] as number, productUp(dlo, dhi, low, high));
      }
    }
  }

  private reach(free: readonly number[], slopes: Float64Array): readonly [down: number, up: number] {
    const { room } = this;
    let below = 0;
    let above = 0;
    for (const source of free) {
      const at = 2 * source;
      const low = slopes[at] as number;
      const high = slopes[at + 1] as number;
      if (low === 0 && high === 0) continue;
      const down = room[at] as number;
      const up = room[at + 1] as number;
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

const undecidedIn = (node: Bound): Choice[] => {
  if (!(node.flags & TURN)) return [];
  const inside = node.parts.flatMap(undecidedIn);
  return node instanceof Choice && !node.taken ? [node, ...inside] : inside;
};

const hasSlow = (node: Bound): boolean => node.isSlow || node.parts.some(hasSlow);

export const middleOf = (low: number, high: number): number => Math.min(high, low + (high - low) / 2);
