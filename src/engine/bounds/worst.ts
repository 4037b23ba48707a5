import { FAULTS, LOST, MUTE, type Port } from '../../language/bounds/bound.ts';
import type { Grid } from '../network/grid.ts';
import type { Row, RowBound, Worst } from '../network/layout.ts';
import type { Network } from '../network/network.ts';
import { Cone, type Part } from './cone.ts';
import { type Known, knownByParts } from './parts.ts';
import { BESIDE, FEW_PARTS, MOST_PARTS, SUPPOSED, search } from './search.ts';

const ALL = Number.POSITIVE_INFINITY;
/** Share of the whole spread below which a source counts for nothing: rounding, where what is shared drops out. */
const NOTHING = 1e-12;
const ULP = 2.3e-16;
/** What moves no more than so many times its rounding with every source in the middle does not move: there is nothing to find. */
const DUST = 4;
/** Of so many conditions at most each way to come out is looked at by itself. */
const MOST_SUPPOSED = 2;
/** An end known to this share of the spread is known. */
const CLOSE = 1e-4;

/**
 * Where a row is at its worst. With every source's way known over the whole box, weakly too, at a corner; else between the
 * bounds, narrowed by splitting the box in the sources that go both ways.
 */
export class WorstCases {
  private readonly cones = new Map<Row, Cone>();

  constructor(
    private readonly network: Network,
    private readonly grid: Grid,
  ) {}

  /** Rows or references have changed. */
  forget(): void {
    this.cones.clear();
  }

  of(row: Row): Worst | undefined {
    const { bound } = row;
    if (!bound) return undefined;
    bound.worst ??= this.find(row, bound);
    return bound.worst;
  }

  private find(row: Row, bound: RowBound): Worst {
    if (bound.flags & MUTE) return nowhere;
    const ways = this.waysOf(row, bound);
    if (!(bound.flags & FAULTS) && ways.every((way) => way !== 0))
      return { lowest: ways as (-1 | 1)[], lo: bound.lo, hi: bound.hi, isLoose: false };
    return this.byOne(row, bound) ?? this.byParts(row, bound, ways) ?? this.bySearch(row, bound, ways);
  }

  /** By the parts of its formula, where what they come to tells one end or both. */
  private byParts(row: Row, bound: RowBound, ways: readonly (-1 | 0 | 1)[]): Worst | undefined {
    if (bound.flags & FAULTS) return undefined;
    const known = knownByParts(row, bound, {
      cone: () => this.coneOf(row),
      load: () => this.load(row, bound),
      waysOf: (slopes, lo, hi) => this.waysBy(row, slopes, lo, hi),
      endOf: (source, way) => {
        const { lo = Number.NaN, hi = Number.NaN } = this.network.sourceRow(source)?.bound ?? {};
        return way < 0 !== this.isTurned(source) ? lo : hi;
      },
    });
    if (!known || !(known.isLow || known.isHigh)) return undefined;
    return this.bySearch(row, bound, ways, known);
  }

  /** By member: the end at which the row is lowest, 0 where it goes both ways. */
  private waysOf(row: Row, { slopes, lo, hi }: RowBound): (-1 | 0 | 1)[] {
    return this.waysBy(row, slopes, lo, hi);
  }

  private waysBy(row: Row, slopes: Float64Array, least: number, most: number): (-1 | 0 | 1)[] {
    const reaches = row.members.map((source, m) => {
      const { lo = 0, hi = 0 } = this.network.sourceRow(source)?.bound ?? {};
      const steepest = Math.max(Math.abs(slopes[2 * m] as number), Math.abs(slopes[2 * m + 1] as number));
      return steepest === 0 || hi === lo ? 0 : steepest * (hi - lo);
    });
    const whole = reaches.reduce((sum, reach) => sum + (reach < ALL ? reach : 0), 0);
    const size = Math.max(Math.abs(least), Math.abs(most));
    const nothing = Math.max(NOTHING * whole, size < ALL ? ULP * size : 0);
    return row.members.map((source, m) => {
      const [low, high] = [slopes[2 * m] as number, slopes[2 * m + 1] as number];
      const turned = this.isTurned(source);
      if (low >= 0) return turned ? 1 : -1;
      if (high <= 0) return turned ? -1 : 1;
      if ((reaches[m] as number) > nothing) return 0;
      return low + high >= 0 === turned ? 1 : -1;
    });
  }

  /** The low end of the source is above its high one. */
  private isTurned(source: number): boolean {
    const [low = 0, high = 0] = this.network.sourceRow(source)?.cases?.values ?? [];
    return low > high;
  }

  /** A row that goes one way with the only row it depends on is at its worst where that one is. */
  private byOne(row: Row, bound: RowBound): Worst | undefined {
    const { enclosure, uses } = bound;
    const at = uses.findIndex(isMoving);
    const used = uses[at];
    if (!enclosure || !used || used.source !== undefined || uses.some((one, i) => i !== at && isMoving(one)))
      return undefined;
    const { dlo, dhi } = this.slopeIn(row, bound, at);
    if (!(dlo >= 0 || dhi <= 0)) return undefined;
    const inner = this.of(used);
    if (!inner || inner.lowest) return undefined;
    const [first, second] = [inner.lo, inner.hi].map((end) => this.valueWith(row, bound, at, end));
    if (!first || !second) return undefined;
    const [low, high] = dlo >= 0 ? [first, second] : [second, first];
    return { lowest: undefined, lo: low.lo, hi: high.hi, isLoose: inner.isLoose };
  }

  private slopeIn(row: Row, bound: RowBound, at: number): Port {
    this.load(row, bound);
    const { root, ports } = bound.enclosure as NonNullable<RowBound['enclosure']>;
    for (const port of ports) port.dlo = port.dhi = 0;
    root.forward();
    root.back(1, 1);
    return ports[at] as Port;
  }

  private valueWith(
    row: Row,
    bound: RowBound,
    at: number,
    value: number,
  ): { lo: number; hi: number } | undefined {
    this.load(row, bound);
    const { root, ports } = bound.enclosure as NonNullable<RowBound['enclosure']>;
    const port = ports[at] as Port;
    port.lo = port.hi = value;
    port.flags = 0;
    if (!Number.isFinite(value)) return undefined;
    root.forward();
    return root.flags & FAULTS ? undefined : { lo: root.lo, hi: root.hi };
  }

  private load(row: Row, bound: RowBound): void {
    row.uses.forEach((used, i) => {
      const port = bound.enclosure?.ports[i] as Port;
      const value = this.grid.nominal(used.slot);
      const known = typeof value !== 'object' && value !== undefined;
      port.lo = used.bound?.lo ?? (known ? Number(value) : -ALL);
      port.hi = used.bound?.hi ?? (known ? Number(value) : ALL);
      port.flags = used.bound ? used.bound.flags & FAULTS : known ? 0 : LOST;
    });
  }

  private coneOf(row: Row): Cone {
    let cone = this.cones.get(row);
    if (!cone) {
      cone = new Cone(row, this.grid);
      this.cones.set(row, cone);
    }
    return cone;
  }

  private bySearch(row: Row, bound: RowBound, ways: readonly (-1 | 0 | 1)[], known?: Known): Worst {
    const { middleLo, middleHi } = bound;
    if (!(bound.flags & FAULTS) && bound.hi - bound.lo <= DUST * (middleHi - middleLo))
      return { lowest: undefined, lo: bound.lo, hi: bound.hi, isLoose: false };
    const low = known?.isLow
      ? { outer: known.lo, best: known.lo, isLost: false }
      : this.end(row, bound, ways, -1);
    const high = low.isLost
      ? low
      : known?.isHigh
        ? { outer: 0 - known.hi, best: 0 - known.hi, isLost: false }
        : this.end(row, bound, ways, 1);
    if (low.isLost || high.isLost) return nowhere;
    const [lo, hi] = [low.outer, 0 - high.outer];
    const close = CLOSE * (hi - lo < ALL ? hi - lo : Math.abs(lo > -ALL ? lo : hi));
    const isLoose = (lo > -ALL && low.best - lo > close) || (hi < ALL && high.best - high.outer > close);
    return { lowest: undefined, lo, hi, isLoose };
  }

  /** The low end of a row, or of what is less than nothing by it for the high one. */
  private end(
    row: Row,
    bound: RowBound,
    ways: readonly (-1 | 0 | 1)[],
    side: -1 | 1,
  ): { outer: number; best: number; isLost: boolean } {
    const cone = this.coneOf(row);
    const free: number[] = [];
    const low: number[] = [];
    const high: number[] = [];
    const pinned = new Map<number, number>();
    // In the order of their keys, so that the search goes the same way however the sheet came about.
    const sources = this.network.sourcesInOrder(row);
    sources.forEach((source, i) => {
      const way = ways[(row.ordered.at[i] as number) / 2] as -1 | 0 | 1;
      const { lo = Number.NaN, hi = Number.NaN } = this.network.sourceRow(source)?.bound ?? {};
      if (way !== 0 || lo === hi) {
        const isLow = (way * side === 1) !== this.isTurned(source);
        pinned.set(source, isLow ? lo : hi);
        return;
      }
      free.push(source);
      low.push(lo);
      high.push(hi);
    });
    if (![...low, ...high, ...pinned.values()].every(Number.isFinite))
      return { outer: -ALL, best: ALL, isLost: false };
    cone.pin(free, (source) => pinned.get(source) ?? Number.NaN);
    const over = (a: Float64Array, b: Float64Array): Part => {
      const part = cone.over(a, b);
      return side < 0 ? part : turned(part);
    };
    const outer = side < 0 ? bound.lo : 0 - bound.hi;
    const reach = bound.hi - bound.lo;
    const [from, to] = [Float64Array.from(low), Float64Array.from(high)];
    if (cone.isSlow) return search(over, from, to, outer, reach, FEW_PARTS);
    over(from, to);
    const { undecided } = cone;
    if (undecided.length === 0 || undecided.length > MOST_SUPPOSED)
      return search(over, from, to, outer, reach, MOST_PARTS);
    // No jump is left with each way supposed in turn: together they tell what the row surely is not below.
    let floor = ALL;
    for (let outcomes = 0; outcomes < 2 ** undecided.length; outcomes++) {
      cone.supposed = new Map(undecided.map((one, i) => [one, (outcomes & (1 << i)) !== 0]));
      const found = search(over, from, to, outer, reach, SUPPOSED, floor);
      cone.supposed = new Map();
      if (found.isLost) return found;
      floor = found.outer;
    }
    const found = search(over, from, to, Math.max(outer, floor), reach, BESIDE);
    // A way was supposed where its condition does not hold, too: where that told little, only splitting tells more.
    return found.isLost || found.best - found.outer <= CLOSE * reach
      ? found
      : search(over, from, to, found.outer, reach, MOST_PARTS);
  }
}

/** It has sources, and they move it: a limit that only stands or falls with them does not. */
const isMoving = ({ bound }: Row): boolean =>
  bound !== undefined && (bound.lo !== bound.hi || (bound.flags & FAULTS) !== 0);

const nowhere: Worst = { lowest: undefined, lo: -ALL, hi: ALL, isLoose: false };

const turned = (part: Part): Part => ({
  ...part,
  lo: 0 - part.hi,
  hi: 0 - part.lo,
  middleLo: 0 - part.middleHi,
  middleHi: 0 - part.middleLo,
  slopes: part.slopes.map((_, i) => 0 - (part.slopes[i ^ 1] as number)),
});
