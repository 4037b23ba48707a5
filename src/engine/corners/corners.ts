import type { WorstCases } from '../bounds/worst.ts';
import { type Grid, highColumn, lowColumn } from '../network/grid.ts';
import type { CornerEnd, CornerLayout, Guest, Row } from '../network/layout.ts';
import type { Network } from '../network/network.ts';
import type { Figure } from '../rows/results.ts';
import { CornerColumn } from './corner-column.ts';

type Side = 'low' | 'high';

/**
 * The cases in which rows are at their worst, where that is a corner: every source at an end. Rows whose corners agree
 * share a pair of columns. Where no corner is known to be the worst, the bounds of the row tell (`worst.ts`).
 */
export class Corners {
  private columns: CornerLayout[] = [];
  private readonly spare: number[] = [];
  /** Columns in which something changes, the rows to be laid out anew there, and sources put at another end. */
  private readonly dirty = new Map<CornerLayout, { rows: Set<Row>; turned: Set<number> }>();

  constructor(
    private readonly network: Network,
    private readonly grid: Grid,
    private readonly worst: WorstCases,
  ) {}

  /** Ends of a row at its worst; undefined while they are not worked out. */
  endsOf(row: Row): Pick<Figure, 'low' | 'high' | 'atMost'> | undefined {
    const worst = this.isKnown(row) ? this.worst.of(row) : undefined;
    if (!worst) return undefined;
    if (!worst.lowest) return { low: worst.lo, high: worst.hi, ...(worst.isLoose ? { atMost: true } : {}) };
    if (row.members.length > 1) {
      const [low, high] = [this.valueOf(row, 'low'), this.valueOf(row, 'high')];
      return low === undefined || high === undefined ? undefined : { low, high };
    }
    const [first = Number.NaN, second = Number.NaN] = row.cases?.values ?? [];
    return { low: Math.min(first, second), high: Math.max(first, second) };
  }

  private isKnown(row: Row): boolean {
    return typeof this.grid.nominal(row.slot) === 'number';
  }

  /** Value of the row at its low or its high corner; undefined while it has none, NaN where it has no value there. */
  private valueOf(row: Row, side: Side): number | undefined {
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

  /** Seats rows at their corners; `relaid` when rows or references have changed. Writes what differs. */
  seat(targets: readonly Row[], relaid: boolean): void {
    if (relaid) this.worst.forget();
    for (const row of targets) {
      const worst = row.members.length < 2 || !this.isKnown(row) ? undefined : this.worst.of(row);
      if (worst?.lowest) this.place(row, worst.lowest);
      else this.leave(row);
    }
    this.rewrite(relaid);
  }

  /** Seats both corners of a row; where they are as they were nothing is done. */
  private place(row: Row, lowest: readonly (-1 | 1)[]): void {
    const { low, high } = row.seat ?? {};
    if (low && high && isSame(low.sources, low.ends, row.members, lowest)) {
      low.sources = row.members;
      high.sources = row.members;
      return;
    }
    this.move(row, 'low', lowest);
    this.move(
      row,
      'high',
      lowest.map((end) => (end < 0 ? 1 : -1)),
    );
  }

  private move(row: Row, side: Side, ends: readonly CornerEnd[]): void {
    row.seat ??= { low: undefined, high: undefined };
    const { seat } = row;
    const old = seat[side];
    if (old) this.free(old);
    const sources = row.members;
    let column = old?.column.takes(sources, ends)
      ? old.column
      : this.columns.find((one) => one.takes(sources, ends));
    if (!column) {
      column = new CornerColumn(this.takeColumn());
      this.columns.push(column);
    }
    const guest: Guest = { row, column, sources, ends, at: -1, layout: -1 };
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
