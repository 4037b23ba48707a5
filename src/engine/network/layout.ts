import type { Problem } from '../../../shared/problem.ts';
import type { Enclosure } from '../../language/bounds/enclose.ts';
import type { BlockFunction } from '../../language/compile/closure.ts';
import type { Expr } from '../../language/syntax/syntax.ts';
import type { RowKey } from '../rows/key.ts';
import type { Figure } from '../rows/results.ts';
import type { RowDefinition } from '../rows/row.ts';
import type { Bits } from './bits.ts';
import type { Content, GridError } from './grid.ts';
import type { Template } from './template.ts';

/** A row laid out on the grid. */
export interface Row {
  key: RowKey;
  owner: string;
  /** Grid row, from 0. */
  slot: number;
  definition: RowDefinition;
  /** Formula of the nominal, where it has one. */
  template: Template | undefined;
  /** Formulas of the ends of a source, where they are not plain numbers. */
  low: Template | undefined;
  high: Template | undefined;
  /** Rows its formulas refer to, and the rows that refer to it. */
  uses: Row[];
  usedBy: Row[];
  /** Sources upstream, its own included. */
  sources: Bits;
  /** The same in the order of their numbers: the first two of the row's cases are the ends of the first, and so on. */
  members: readonly number[];
  /**
   * The same in the order of their keys, as of a ranking of the network, and where the low end of each stands in the row's
   * cases; its high end is the next.
   */
  ordered: { ranking: number; sources: readonly number[]; at: readonly number[] };
  /** Slot of its own source. */
  source: number | undefined;
  /** Set while the row stands in a ring of names. */
  ring: Problem | undefined;
  /** Place in an order in which every row comes after the rows it uses. */
  place: number;
  /** What stands on the grid for its nominal. */
  content: Content;
  /** Its other cases, where it has sources upstream. */
  cases: RowCases | undefined;
  /** What it can come to while its sources move, where it has any. */
  bound: RowBound | undefined;
  /** Its worst case is wanted: it is shown or judged. */
  wanted: boolean;
  /** Its figure as it stands, where its worst case is wanted and it has one. */
  figure: Figure | undefined;
  /** Where its worst cases are read, where it has more than one source. */
  seat: Seat | undefined;
  /** A case in which it cannot be computed though it can at nominal. */
  broken: BrokenCase | undefined;
}

/** What a row can come to while its sources stand anywhere within their spread. */
export interface RowBound {
  /** Of a row that follows others. */
  enclosure: Enclosure | undefined;
  /** The formula and the rows used, as the enclosure was made for them. */
  template: Template | undefined;
  uses: readonly Row[];
  /** By port: where each source of the row used stands among those of this one. */
  places: readonly Int32Array[];
  /** The sources of the rows used, as these places were found for them. */
  placed: readonly (readonly number[])[];
  members: readonly number[];
  /** Ends, rounded outward. */
  lo: number;
  hi: number;
  /** With every source in the middle of its range. */
  middleLo: number;
  middleHi: number;
  /** As of `Bound.flags`. */
  flags: number;
  /** Slopes in each member, low and high in turn. */
  slopes: Float64Array;
  /** Where it is worst, once asked for; undefined again when anything moves. */
  worst: Worst | undefined;
}

/** The worst case of a row. */
export interface Worst {
  /**
   * By member, the end at which the row is lowest: -1 or 1; it is highest with every source at the other. Undefined where
   * no corner is known to be the worst.
   */
  lowest: readonly (-1 | 1)[] | undefined;
  /** Its ends, where they are not those corners. */
  lo: number;
  hi: number;
  /** They are at most these: the search was given up. */
  isLoose: boolean;
}

/** A row that can be computed at nominal, but not with one of its sources at an end. */
export interface BrokenCase {
  /** The source, for people. */
  label: string;
  /** How far the source reaches is itself not known: something is missing or wrong where it comes from. */
  unknown: boolean;
  /** Grid column of the case. */
  column: number;
  error?: GridError;
}

/** Which end a source stands at in a corner column: -1 low, 1 high, 0 nominal. */
export type CornerEnd = -1 | 0 | 1;

/** A formula of a row as a closure over blocks of the rows it uses. */
export interface Compiled {
  expr: Expr;
  run: BlockFunction;
}

/** A row that a row uses, as its cases read it. */
export interface Port {
  row: Row;
  /** Layout of the other row that the places of its cases were found for. */
  layout: number;
}

/** The cases of a row beside its nominal. */
export interface RowCases {
  /** Columns it has a value in: the ends of its sources by their numbers, then corners. */
  columns: readonly number[];
  at: ReadonlyMap<number, number>;
  values: Float64Array;
  /** Until it is computed after corners have come or gone: 1 for the columns it had before. */
  known: Uint8Array | undefined;
  errors: Map<number, GridError> | undefined;
  /** Changes whenever the columns do. */
  layout: number;
  ports: Port[];
  /**
   * Port by port and case by case: where in the other row's cases each of its own stands; -1 where that one equals its
   * nominal.
   */
  places: Int32Array;
  formula: Compiled | undefined;
  /** A source: its ends by closure where they are formulas, and what it stands at in each column. */
  low: Compiled | undefined;
  high: Compiled | undefined;
  stands: readonly CornerEnd[];
}

/** A corner column: which rows need a cell there and what sources point to. See `corner-column.ts`. */
export interface CornerLayout {
  column: number;
  needs: ReadonlySet<Row>;
  /** End at which a source stands in this column: -1 low, 1 high, 0 nominal. */
  end(source: number): CornerEnd;
  /** True where sources may stand at these ends beside what the rows in it ask for. */
  takes(sources: readonly number[], ends: readonly CornerEnd[]): boolean;
  readonly guests: ReadonlySet<Guest>;
  /** Seats a row; notes in `stirred` the rows that have to be laid out anew for it, and in `turned` sources put elsewhere. */
  add(guest: Guest, stirred: Set<Row>, turned: Set<number>): void;
  leave(guest: Guest): void;
  /** True when it is time to look again which rows are needed. */
  readonly isLoose: boolean;
  /** Finds anew which rows must have a cell in this column: every row with sources that a guest depends on. */
  gather(): void;
}

/** A row in a corner column, and the end at which each of its sources has to stand there to push it down (or up). */
export interface Guest {
  row: Row;
  column: CornerLayout;
  /** By number, as the members of the row were when it was seated. */
  sources: readonly number[];
  ends: readonly CornerEnd[];
  /** Where the column stands among the cases of the row, as of a layout of theirs. */
  at: number;
  layout: number;
}

/** Where a row's low and high corners are. */
interface Seat {
  low: Guest | undefined;
  high: Guest | undefined;
}
