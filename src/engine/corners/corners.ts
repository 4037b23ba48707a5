import { type Grid, highColumn, lowColumn } from '../network/grid.ts';
import type { CornerEnd, CornerLayout, Guest, Row } from '../network/layout.ts';
import type { Network } from '../network/network.ts';
import { CornerColumn } from './corner-column.ts';
import { CornerSearch, Sum } from './corner-search.ts';
import type { Trial } from './trial.ts';

type Side = 'low' | 'high';

const NO_VALUES = new Float64Array(0);

/**
 * Worst case by corners. Adding one-at-a-time effects misleads where they multiply, so the signs of a row's effects
 * pick two corners of the box of sources, and the row is computed there. Exact where each source pushes the same way
 * throughout the box; where the corner value departs from the sum of effects, every source is tried both ways at the
 * corner until none improves it.
 *
 * Effects are read off the cases of the row: those of its n-th member stand at 2n and 2n + 1.
 */
export class Corners {
  private columns: CornerLayout[] = [];
  private readonly spare: number[] = [];
  private readonly search: CornerSearch;
  private readonly down = new Sum();
  private readonly up = new Sum();
  /** Rows to be looked at again once their corners are computed. */
  private readonly doubtful: Row[] = [];
  /** Columns in which something changes, the rows to be laid out anew there, and sources put at another end. */
  private readonly dirty = new Map<CornerLayout, { rows: Set<Row>; turned: Set<number> }>();

  constructor(
    private readonly network: Network,
    private readonly grid: Grid,
    private readonly trial: Trial,
  ) {
    this.search = new CornerSearch(network, grid, trial);
  }

  /** Value of the row at its low or its high corner; undefined while it has none, NaN where it has no value there. */
  valueOf(row: Row, side: Side): number | undefined {
    const guest = row.seat?.[side];
    return guest && this.valueAt(row, guest);
  }

  private valueAt(row: Row, guest: Guest): number {
    const { cases } = row;
    if (!cases || typeof this.grid.nominal(row.slot) !== 'number') return Number.NaN;
    if (guest.layout !== cases.layout) {
      guest.layout = cases.layout;
      guest.at = cases.at.get(guest.column.column) ?? -1;
    }
    return guest.at < 0 ? Number.NaN : (cases.values[guest.at] as number);
  }

  /** Rows that are no more. */
  dismiss(rows: Iterable<Row>): void {
    for (const row of rows) this.leave(row);
  }

  /** Seats rows by the signs of their effects; `relaid` when rows or references have changed. Writes what differs. */
  seat(targets: readonly Row[], relaid: boolean): void {
    if (relaid) this.trial.forget();
    this.doubtful.length = 0;
    for (const row of targets) {
      if (row.members.length < 2) this.leave(row);
      else this.place(row);
    }
    this.rewrite(relaid);
  }

  /**
   * Second look at the rows just seated, after the corners have been computed: where effects interact, single sources
   * are turned at the corner as long as that makes it worse. Returns true when something was moved.
   */
  refine(): boolean {
    for (const row of this.doubtful) {
      const seat = row.seat;
      if (!seat?.low || !seat.high) continue;
      const nominal = this.grid.nominal(row.slot);
      if (typeof nominal !== 'number') continue;
      this.refineAt(row, nominal, seat.low, -1);
      this.refineAt(row, nominal, seat.high, 1);
    }
    if (this.dirty.size === 0) return false;
    this.rewrite(false);
    return true;
  }

  private refineAt(row: Row, nominal: number, guest: Guest, way: -1 | 1): void {
    const { start, ends, column } = guest;
    // A corner that was turned before is looked at again from where its signs put it: what comes of it depends on the sheet
    // as it stands, not on how it came about.
    const atStart = ends === start;
    const turned = atStart
      ? this.search.worse(row, nominal, start, way, this.valueAt(row, guest), column.column)
      : this.search.worse(row, nominal, start, way);
    if (turned || !atStart) this.move(row, way < 0 ? 'low' : 'high', turned ?? start, start);
  }

  /** Seats both corners of a row by the signs of its effects; where those are as they were nothing is done. */
  private place(row: Row): void {
    const nominal = this.search.numberAt(row);
    const seat = row.seat;
    const places = this.search.inOrder(row);
    const values = row.cases?.values ?? NO_VALUES;
    const low = seat?.low?.sources === row.members ? seat.low.start : undefined;
    const high = seat?.high?.sources === row.members ? seat.high.start : undefined;
    let same = low !== undefined && high !== undefined;
    let dead = false;
    const { down, up } = this;
    down.clear();
    up.clear();
    for (let i = 0; i < places.length; i++) {
      const at = places[i] as number;
      const m = at >> 1;
      const below = (values[at] as number) - nominal;
      const above = (values[at + 1] as number) - nominal;
      if (below === 0 && above === 0) dead = true;
      if (!same) continue;
      const lowEnd = this.search.endOf(row, m, below, above, -1);
      const highEnd = this.search.endOf(row, m, below, above, 1);
      if (low?.[m] !== lowEnd || high?.[m] !== highEnd) same = false;
      down.add(lowEnd, below, above);
      up.add(highEnd, below, above);
    }
    if (!same || dead) {
      this.placeAt(row, nominal, 'low', -1, dead);
      this.placeAt(row, nominal, 'high', 1, dead);
      this.doubtful.push(row);
      return;
    }
    // What stands where it stood has been computed there already.
    const isPlain = (guest: Guest | undefined, sum: Sum): boolean =>
      guest !== undefined && guest.ends === guest.start && sum.explains(this.valueAt(row, guest) - nominal);
    if (!isPlain(seat?.low, down) || !isPlain(seat?.high, up)) this.doubtful.push(row);
  }

  private placeAt(row: Row, nominal: number, side: Side, way: -1 | 1, dead: boolean): void {
    const values = row.cases?.values;
    const n = row.members.length;
    const ends: CornerEnd[] = [];
    const silent: number[] = [];
    for (let m = 0; m < n; m++) {
      const below = (values?.[2 * m] ?? Number.NaN) - nominal;
      const above = (values?.[2 * m + 1] ?? Number.NaN) - nominal;
      ends.push(this.search.endOf(row, m, below, above, way));
    }
    if (dead)
      for (const at of this.search.inOrder(row)) {
        if ((values?.[at] as number) - nominal === 0 && (values?.[at + 1] as number) - nominal === 0)
          silent.push(at / 2);
      }
    const turned = silent.length > 0 ? this.search.ascend(row, ends, way, silent) : undefined;
    const start = turned ?? ends;
    const old = row.seat?.[side];
    if (old && isSame(old.sources, old.start, row.members, start)) old.sources = row.members;
    else this.move(row, side, start, start);
  }

  private move(row: Row, side: Side, ends: readonly CornerEnd[], start: readonly CornerEnd[]): void {
    row.seat ??= { low: undefined, high: undefined };
    const { seat } = row;
    const old = seat[side];
    if (old) {
      if (isSame(old.sources, old.ends, row.members, ends)) {
        old.sources = row.members;
        old.start = start;
        old.ends = ends;
        return;
      }
      this.free(old);
    }
    const sources = row.members;
    let column = old?.column.takes(sources, ends)
      ? old.column
      : this.columns.find((one) => one.takes(sources, ends));
    if (!column) {
      column = new CornerColumn(this.takeColumn());
      this.columns.push(column);
    }
    const guest: Guest = { row, column, sources, ends, start, at: -1, layout: -1 };
    seat[side] = guest;
    const { rows, turned } = this.changing(column);
    column.add(guest, rows, turned);
  }

  private leave(row: Row): void {
    const seat = row.seat;
    if (!seat) return;
    row.seat = undefined;
    if (seat.low) this.free(seat.low);
    if (seat.high) this.free(seat.high);
  }

  private free(guest: Guest): void {
    guest.column.leave(guest);
    this.changing(guest.column);
  }

  private changing(column: CornerLayout): { rows: Set<Row>; turned: Set<number> } {
    let changes = this.dirty.get(column);
    if (!changes) {
      changes = { rows: new Set(), turned: new Set() };
      this.dirty.set(column, changes);
    }
    return changes;
  }

  private rewrite(all: boolean): void {
    if (all) for (const column of this.columns) this.changing(column);
    if (this.dirty.size === 0) return;
    this.network.corners = this.columns;
    for (const [column, { rows, turned }] of this.dirty) {
      for (const source of turned) {
        const row = this.network.sourceRow(source);
        if (row) rows.add(row);
      }
      if (!all && !column.isLoose) continue;
      for (const row of column.needs) rows.add(row);
      column.gather();
      for (const row of column.needs) rows.add(row);
    }
    for (const [column, { rows }] of this.dirty)
      for (const row of rows) this.network.layCorner(column, row, !all);
    for (const column of this.dirty.keys()) {
      if (column.guests.size > 0) continue;
      this.columns = this.columns.filter((one) => one !== column);
      this.spare.push(column.column);
    }
    this.dirty.clear();
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

/** True where two rows of sources stand at the same ends. */
const isSame = (
  sources: readonly number[],
  ends: readonly CornerEnd[],
  otherSources: readonly number[],
  otherEnds: readonly CornerEnd[],
): boolean => {
  if (ends.length !== otherEnds.length) return false;
  for (let i = 0; i < ends.length; i++)
    if (ends[i] !== otherEnds[i] || sources[i] !== otherSources[i]) return false;
  return true;
};
