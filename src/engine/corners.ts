import { CornerColumn, type Demand, type Guest } from './corner-column.ts';
import type { Effect } from './figure.ts';
import { type Grid, highColumn, lowColumn, NOMINAL } from './grid.ts';
import type { Row } from './layout.ts';
import type { Network } from './network.ts';
import type { End, Trial, Turn } from './trial.ts';

const WAYS = [-1, 1] as const;
const ENDS: readonly End[] = [-1, 1, 0];

interface Place {
  column: CornerColumn;
  guest: Guest;
}

/** Where a row's low and high corners are. */
interface Seat {
  low?: Place;
  high?: Place;
}

/** A row whose worst case is wanted, with its effects as they stand. */
export interface Target {
  row: Row;
  effects: readonly Effect[];
}

/**
 * Worst case by corners. Adding one-at-a-time effects misleads where they multiply, so the signs of a row's effects
 * pick two corners of the box of sources, and the row is computed there. Exact where each source pushes the same way
 * throughout the box; where the corner value departs from the sum of effects, every source is tried both ways at the
 * corner until none improves it.
 */
export class Corners {
  private columns: CornerColumn[] = [];
  private readonly seats = new Map<string, Seat>();
  private readonly spare: number[] = [];

  constructor(
    private readonly network: Network,
    private readonly grid: Grid,
    private readonly trial: Trial,
  ) {}

  /** Value of the row at its low and its high corner; undefined while it has none. */
  valueOf(row: Row): { low: number; high: number } | undefined {
    const seat = this.seats.get(row.key);
    return seat && this.valueAt(row, seat);
  }

  private valueAt(row: Row, { low, high }: Seat): { low: number; high: number } | undefined {
    if (!low || !high) return undefined;
    const at = ({ column }: Place): number => {
      const value = this.grid.value(row.slot, column.column);
      return typeof value === 'number' ? value : Number.NaN;
    };
    return { low: at(low), high: at(high) };
  }

  /** Seats rows by the signs of their effects; `relaid` when rows or references have changed. Writes what differs. */
  seat(targets: readonly Target[], gone: Iterable<string>, relaid: boolean): void {
    const dirty = new Set<CornerColumn>();
    if (relaid) this.trial.forget();
    for (const key of gone) this.leave(key, dirty);
    for (const { row, effects } of targets) {
      if (effects.length < 2) {
        this.leave(row.key, dirty);
        continue;
      }
      this.place(row, 'low', effects, -1, dirty);
      this.place(row, 'high', effects, 1, dirty);
    }
    this.rewrite(relaid ? new Set(this.columns) : dirty);
  }

  /**
   * Second look, after the corners have been computed: where effects interact, single sources are turned at the corner
   * as long as that makes it worse. Returns true when something was moved.
   */
  refine(targets: readonly Target[]): boolean {
    const dirty = new Set<CornerColumn>();
    for (const { row, effects } of targets) {
      const seat = this.seats.get(row.key);
      const at = seat && this.valueAt(row, seat);
      if (!at) continue;
      for (const way of WAYS) {
        const end = way < 0 ? 'low' : 'high';
        const guest = seat[end]?.guest;
        if (!guest) continue;
        const doubtful = turnable(effects, guest.demand, this.grid, row, at[end]);
        if (doubtful.length === 0) continue;
        const turned = this.ascend(row, guest.demand, way, apartOf(effects), doubtful);
        if (turned) this.move(row, end, turned, dirty);
      }
    }
    if (dirty.size === 0) return false;
    this.rewrite(dirty);
    return true;
  }

  /** Seats one corner of a row by the signs of its effects; where those are as they were nothing is done. */
  private place(
    row: Row,
    end: 'low' | 'high',
    effects: readonly Effect[],
    way: -1 | 1,
    dirty: Set<CornerColumn>,
  ): void {
    const guest = this.seats.get(row.key)?.[end]?.guest;
    let dead = false;
    let same = guest !== undefined && guest.row === row && guest.demand.size === effects.length;
    for (const effect of effects) {
      if (effect.low === 0 && effect.high === 0) dead = true;
      if (same && guest?.demand.get(effect.source) !== endOf(effect, way)) same = false;
    }
    if (same && !dead) return;
    const demand = new Map(effects.map((effect) => [effect.source, endOf(effect, way)]));
    const silent = effects.filter((effect) => effect.low === 0 && effect.high === 0);
    const turned = dead
      ? this.ascend(
          row,
          demand,
          way,
          apartOf(effects),
          silent.map((effect) => effect.source),
        )
      : undefined;
    this.move(row, end, turned ?? demand, dirty);
  }

  /** Turns single sources to the end (or nominal) that makes the row worst, until none does; undefined when none did. */
  private ascend(
    row: Row,
    start: Demand,
    way: -1 | 1,
    apart: ReadonlySet<number>,
    only?: readonly number[],
  ): Demand | undefined {
    const turns: Turn[] = [];
    for (const source of only ?? start.keys())
      for (const end of ENDS)
        if (end !== start.get(source) && !(end === 0 && apart.has(source))) turns.push({ source, end });
    const values = this.trial.values(row, (source) => start.get(source) ?? 0, turns);
    const best = (values[0] as number) * way;
    if (Number.isNaN(best)) return undefined;
    for (let i = 0; i < turns.length; i++)
      if ((values[i + 1] as number) * way > best) return this.climb(row, start, way, apart, only);
    return undefined;
  }

  /** Turns one source after another where some turn is known to help. */
  private climb(
    row: Row,
    start: Demand,
    way: -1 | 1,
    apart: ReadonlySet<number>,
    only: readonly number[] | undefined,
  ): Demand {
    const demand = new Map(start);
    const at = (source: number): End => demand.get(source) ?? 0;
    let best = (this.trial.values(row, at, [])[0] as number) * way;
    for (let pass = 0; pass < 3; pass++) {
      let better = false;
      for (const source of only ?? demand.keys()) {
        const kept = demand.get(source) as End;
        const turns = ENDS.filter((end) => end !== kept && !(end === 0 && apart.has(source))).map((end) => ({
          source,
          end,
        }));
        const values = this.trial.values(row, at, turns);
        let choice = kept;
        turns.forEach(({ end }, i) => {
          const value = (values[i + 1] as number) * way;
          if (!(value > best)) return;
          best = value;
          choice = end;
        });
        demand.set(source, choice);
        if (choice !== kept) better = true;
      }
      if (!better) break;
    }
    return demand;
  }

  private move(row: Row, end: 'low' | 'high', demand: Demand, dirty: Set<CornerColumn>): void {
    const seat = this.seats.get(row.key) ?? {};
    this.seats.set(row.key, seat);
    const old = seat[end];
    if (old) {
      if (old.guest.row === row && sameDemand(old.guest.demand, demand)) return;
      this.free(old, dirty);
    }
    let column = old?.column.takes(demand) ? old.column : this.columns.find((one) => one.takes(demand));
    if (!column) {
      column = new CornerColumn(this.takeColumn());
      this.columns.push(column);
    }
    const guest = { row, demand };
    column.add(guest);
    seat[end] = { column, guest };
    dirty.add(column);
  }

  private leave(key: string, dirty: Set<CornerColumn>): void {
    const seat = this.seats.get(key);
    if (!seat) return;
    this.seats.delete(key);
    if (seat.low) this.free(seat.low, dirty);
    if (seat.high) this.free(seat.high, dirty);
  }

  private free({ column, guest }: Place, dirty: Set<CornerColumn>): void {
    column.leave(guest);
    dirty.add(column);
  }

  private rewrite(dirty: ReadonlySet<CornerColumn>): void {
    if (dirty.size === 0) return;
    this.network.corners = this.columns;
    const before = new Map([...dirty].map((column) => [column, column.needs]));
    for (const column of dirty) column.needs = column.gather();
    for (const column of dirty) this.network.layCorner(column, before.get(column) as Set<Row>);
    for (const column of dirty) {
      if (column.guests.size > 0) continue;
      this.columns = this.columns.filter((one) => one !== column);
      this.spare.push(column.column);
    }
    this.network.corners = this.columns;
  }

  private takeColumn(): number {
    const spare = this.spare.pop();
    if (spare !== undefined) return spare;
    const slot = this.network.columnSlots.take();
    this.spare.push(highColumn(slot));
    return lowColumn(slot);
  }
}

/** The end at which a source pushes a row down (`way` -1) or up. */
function endOf(effect: Effect, way: -1 | 1): End {
  const low = Number.isNaN(effect.low) ? 0 : effect.low * way;
  const high = Number.isNaN(effect.high) ? 0 : effect.high * way;
  // Both ends push the wrong way: the worst is at nominal, if it lies between them.
  return low < 0 && high < 0 && !effect.apart ? 0 : low >= high ? -1 : 1;
}

/** Sources that cannot be at their nominal. */
const apartOf = (effects: readonly Effect[]): ReadonlySet<number> =>
  new Set(effects.filter((effect) => effect.apart).map((effect) => effect.source));

const sameDemand = (a: Demand, b: Demand): boolean => {
  if (a.size !== b.size) return false;
  for (const [source, end] of a) if (b.get(source) !== end) return false;
  return true;
};

/**
 * Sources whose sign at nominal may mislead at the corner: all of them where the value there is far from what the single
 * effects add up to, else those whose own effect is no larger than what is amiss.
 */
function turnable(
  effects: readonly Effect[],
  demand: Demand,
  grid: Grid,
  row: Row,
  corner: number,
): readonly number[] {
  const all = (): number[] => effects.map((effect) => effect.source);
  if (Number.isNaN(corner)) return all();
  const nominal = grid.value(row.slot, NOMINAL);
  if (typeof nominal !== 'number') return [];
  let sum = 0;
  let reach = 0;
  for (const effect of effects) {
    const end = demand.get(effect.source) ?? 0;
    const part = end < 0 ? effect.low : end > 0 ? effect.high : 0;
    if (Number.isNaN(part)) return all();
    sum += part;
    reach += Math.abs(part);
  }
  const amiss = Math.abs(corner - nominal - sum);
  if (amiss > 0.02 * reach) return all();
  if (amiss <= 1e-9 * reach) return [];
  return effects.filter(({ low, high }) => Math.abs(high - low) <= 4 * amiss).map((effect) => effect.source);
}
