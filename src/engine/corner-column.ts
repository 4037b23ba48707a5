import { isEmpty } from './bits.ts';
import type { CornerLayout, Row } from './layout.ts';
import type { End } from './trial.ts';

/** The end at which each source upstream of a row has to stand to push it down (or up), by source. */
export type Demand = ReadonlyMap<number, End>;

/** A row in a column, at the ends it asks for. */
export interface Guest {
  row: Row;
  demand: Demand;
}

const UNSET = 2;

/** One column in which every source stands at an end; rows whose demands agree share it. */
export class CornerColumn implements CornerLayout {
  needs: Set<Row> = new Set();
  readonly guests = new Set<Guest>();
  private wanted: number[] = [];
  private stale = false;

  constructor(readonly column: number) {}

  /** Ends wanted by those who stay; a source nobody asks for goes back to nominal. */
  private get ends(): number[] {
    if (this.stale) {
      this.stale = false;
      this.wanted = [];
      for (const { demand } of this.guests) for (const [source, end] of demand) this.wanted[source] = end;
    }
    return this.wanted;
  }

  end(source: number): End {
    const end = this.ends[source] ?? UNSET;
    return end === UNSET ? 0 : (end as End);
  }

  takes(demand: Demand): boolean {
    const ends = this.ends;
    for (const [source, end] of demand) {
      const own = ends[source] ?? UNSET;
      if (own !== UNSET && own !== end) return false;
    }
    return true;
  }

  add(guest: Guest): void {
    const ends = this.ends;
    this.guests.add(guest);
    for (const [source, end] of guest.demand) ends[source] = end;
  }

  leave(guest: Guest): void {
    this.guests.delete(guest);
    this.stale = true;
  }

  /** Rows that must have a cell in this column: every row with sources that a guest hangs on. */
  gather(): Set<Row> {
    const all = new Set<Row>();
    const open = [...this.guests].map((guest) => guest.row);
    for (let row = open.pop(); row; row = open.pop()) {
      if (all.has(row) || isEmpty(row.sources)) continue;
      all.add(row);
      if (row.source === undefined) open.push(...row.uses);
    }
    return all;
  }
}
