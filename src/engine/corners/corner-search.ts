import { isApart } from '../network/figure.ts';
import type { Grid } from '../network/grid.ts';
import type { CornerEnd, Row } from '../network/layout.ts';
import type { Network } from '../network/network.ts';
import type { Trial, Turn } from './trial.ts';

const ENDS: readonly CornerEnd[] = [-1, 1, 0];
const NONE: readonly number[] = [];

/** What single effects add up to at a corner. */
export class Sum {
  effect = 0;
  reach = 0;

  clear(): void {
    this.effect = 0;
    this.reach = 0;
  }

  add(end: number, below: number, above: number): void {
    if (end === 0) return;
    const part = end < 0 ? below : above;
    this.effect += part;
    this.reach += Math.abs(part);
  }

  /** True where the corner is no further from that than rounding takes it. */
  explains(effect: number): boolean {
    return Math.abs(effect - this.effect) <= 1e-9 * this.reach;
  }
}

/**
 * Finds the ends of its sources at which a row is at its worst, by signs and by trial. Members are numbered as in
 * `Row.members`; the ends of the n-th stand at 2n and 2n + 1 among the cases of the row.
 */
export class CornerSearch {
  private readonly sum = new Sum();

  constructor(
    private readonly network: Network,
    private readonly grid: Grid,
    private readonly trial: Trial,
  ) {}

  /**
   * The corner a row comes to from the one at `start` when sources that may mislead are turned as long as that makes it
   * worse; undefined where none does. `corner` is the value at the start, where the grid has it in `column`.
   */
  worse(
    row: Row,
    nominal: number,
    start: readonly CornerEnd[],
    way: -1 | 1,
    corner?: number,
    column?: number,
  ): CornerEnd[] | undefined {
    const from = corner ?? (this.trial.values(row, this.endsBy(row, start), [])[0] as number);
    const doubtful = this.turnable(row, nominal, start, from);
    if (doubtful.length === 0) return undefined;
    if (column === undefined) return this.ascend(row, start, way, doubtful);
    const turns = this.turnsOf(row, start, doubtful);
    const values = this.trial.at(row, column, turns);
    return this.isBetter(values, turns.length, way) ? this.climb(row, start, way, doubtful) : undefined;
  }

  /** The end at which a source pushes a row down (`way` -1) or up. */
  endOf(row: Row, member: number, below: number, above: number, way: -1 | 1): CornerEnd {
    const low = Number.isNaN(below) ? 0 : below * way;
    const high = Number.isNaN(above) ? 0 : above * way;
    // Both ends push the wrong way: the worst is at nominal, if it lies between them.
    if (low < 0 && high < 0 && !this.isApart(row, member)) return 0;
    return low >= high ? -1 : 1;
  }

  /** The source of a member that works on the row to one side only cannot be at its nominal. */
  private isApart(row: Row, member: number): boolean {
    const nominal = this.numberAt(row);
    const values = row.cases?.values;
    const below = (values?.[2 * member] ?? Number.NaN) - nominal;
    const above = (values?.[2 * member + 1] ?? Number.NaN) - nominal;
    return below * above > 0 && isApart(this.network, this.grid, row.members[member] as number);
  }

  numberAt(row: Row): number {
    const nominal = this.grid.nominal(row.slot);
    return typeof nominal === 'number' ? nominal : Number.NaN;
  }

  /** Where the cases of its sources stand, in the order that does not depend on how the sheet came about. */
  inOrder(row: Row): readonly number[] {
    this.network.sourcesInOrder(row);
    return row.ordered.at;
  }

  /** Every other end that some members of a row could be put at. */
  private turnsOf(row: Row, ends: readonly CornerEnd[], only: readonly number[]): Turn[] {
    const turns: Turn[] = [];
    for (const member of only)
      for (const end of ENDS)
        if (end !== ends[member] && !(end === 0 && this.isApart(row, member)))
          turns.push({ source: row.members[member] as number, end });
    return turns;
  }

  private isBetter(values: Float64Array, turns: number, way: -1 | 1): boolean {
    const best = (values[0] as number) * way;
    for (let i = 1; i <= turns; i++) if ((values[i] as number) * way > best) return true;
    return false;
  }

  /** Turns single sources to the end (or nominal) that makes the row worst, until none does; undefined when none did. */
  ascend(
    row: Row,
    start: readonly CornerEnd[],
    way: -1 | 1,
    only: readonly number[],
  ): CornerEnd[] | undefined {
    const turns = this.turnsOf(row, start, only);
    const values = this.trial.values(row, this.endsBy(row, start), turns);
    return this.isBetter(values, turns.length, way) ? this.climb(row, start, way, only) : undefined;
  }

  private endsBy(row: Row, ends: readonly CornerEnd[]): (source: number) => CornerEnd {
    return (source) => (ends[row.members.indexOf(source)] ?? 0) as CornerEnd;
  }

  /** Turns one source after another where some turn is known to help. */
  private climb(row: Row, start: readonly CornerEnd[], way: -1 | 1, only: readonly number[]): CornerEnd[] {
    const ends = start.slice();
    const at = this.endsBy(row, ends);
    let best = (this.trial.values(row, at, [])[0] as number) * way;
    for (let pass = 0; pass < 3; pass++) {
      let better = false;
      for (const member of only) {
        const turns = this.turnsOf(row, ends, [member]);
        const values = this.trial.values(row, at, turns);
        let choice = ends[member] as CornerEnd;
        for (let i = 0; i < turns.length; i++) {
          const value = (values[i + 1] as number) * way;
          if (!(value > best)) continue;
          best = value;
          choice = (turns[i] as Turn).end;
        }
        if (choice !== ends[member]) better = true;
        ends[member] = choice;
      }
      if (!better) break;
    }
    return ends;
  }

  /**
   * Members whose sign at nominal may mislead at the corner: all of them where the value there is far from what the
   * single effects add up to, else those whose own effect is no larger than what is amiss.
   */
  private turnable(row: Row, nominal: number, ends: readonly CornerEnd[], corner: number): readonly number[] {
    const places = this.inOrder(row);
    const values = row.cases?.values;
    const all = (): number[] => places.map((at) => at / 2);
    if (!values || Number.isNaN(corner)) return all();
    const { sum } = this;
    sum.clear();
    for (let i = 0; i < places.length; i++) {
      const at = places[i] as number;
      sum.add(
        ends[at >> 1] as number,
        (values[at] as number) - nominal,
        (values[at + 1] as number) - nominal,
      );
    }
    if (Number.isNaN(sum.effect)) return all();
    if (sum.explains(corner - nominal)) return NONE;
    const amiss = Math.abs(corner - nominal - sum.effect);
    if (amiss > 0.02 * sum.reach) return all();
    const doubtful: number[] = [];
    for (let i = 0; i < places.length; i++) {
      const at = places[i] as number;
      const below = (values[at] as number) - nominal;
      const above = (values[at + 1] as number) - nominal;
      if (Math.abs(above - below) <= 4 * amiss) doubtful.push(at >> 1);
    }
    return doubtful;
  }
}
