import { isEmpty } from '../network/bits.ts';
import type { CornerEnd, CornerLayout, Guest, Row } from '../network/layout.ts';

/** So many guests may leave a column before the rows it no longer needs are let go. */
const LOOSE = 8;

/**
 * One column in which every source is at an end; rows whose demands agree share it. A source that no guest asks for
 * stays where it is, and a row that no longer needs it keeps its case for a while: nothing reads them.
 */
export class CornerColumn implements CornerLayout {
  needs = new Set<Row>();
  readonly guests = new Set<Guest>();
  /** By source: where it stands, and how many guests ask for that. */
  private readonly stands: CornerEnd[] = [];
  private readonly asked: number[] = [];
  private left = 0;

  constructor(readonly column: number) {}

  end(source: number): CornerEnd {
    return this.stands[source] ?? 0;
  }

  takes(sources: readonly number[], ends: readonly CornerEnd[]): boolean {
    const { stands, asked } = this;
    for (let i = 0; i < sources.length; i++) {
      const source = sources[i] as number;
      if ((asked[source] ?? 0) > 0 && stands[source] !== ends[i]) return false;
    }
    return true;
  }

  add(guest: Guest, stirred: Set<Row>, turned: Set<number>): void {
    const { stands, asked } = this;
    const { sources, ends } = guest;
    this.guests.add(guest);
    for (let i = 0; i < sources.length; i++) {
      const source = sources[i] as number;
      const end = ends[i] as CornerEnd;
      if (this.end(source) !== end) turned.add(source);
      stands[source] = end;
      asked[source] = (asked[source] ?? 0) + 1;
    }
    this.need(guest.row, stirred);
  }

  leave(guest: Guest): void {
    this.guests.delete(guest);
    this.left++;
    for (const source of guest.sources) (this.asked[source] as number)--;
  }

  get isLoose(): boolean {
    return this.guests.size === 0 || this.left > LOOSE + this.guests.size;
  }

  gather(): void {
    this.left = 0;
    this.needs = new Set();
    for (const guest of this.guests) this.need(guest.row);
  }

  private need(start: Row, fresh?: Set<Row>): void {
    const open = [start];
    for (let row = open.pop(); row; row = open.pop()) {
      if (this.needs.has(row) || isEmpty(row.sources)) continue;
      this.needs.add(row);
      fresh?.add(row);
      if (row.source === undefined) for (const used of row.uses) open.push(used);
    }
  }
}
