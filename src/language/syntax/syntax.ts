import type { Dimension } from '../../../shared/dimension.ts';
import type { Problem } from '../../../shared/problem.ts';
import type { Sort } from './sort.ts';

/** Span of characters, half-open, within the text the tree was read from. */
export interface Span {
  from: number;
  to: number;
}

/** A number with its unit, already in SI. `bare` when the text gave no unit. */
export interface Literal extends Span {
  kind: 'literal';
  value: number;
  dimension: Dimension;
  /** True for a point on a temperature scale (20 degC), false for a difference (20 K) and everything else. */
  point: boolean;
  bare: boolean;
  /** Unit symbol as written, absent when bare. */
  unit?: string;
  /** Number and unit as written: `27/64 in`, `30 deg 15'`. */
  text: string;
  /** Digits after the decimal mark as written; absent for a fraction. Says how finely the number was read. */
  digits?: number;
}

export interface Reference extends Span {
  kind: 'ref';
  /**
   * Cell name, or the name of an input or output inside a library cell's own formulas. In stored text a cell may be
   * named by its id in braces; then this is the id with its braces, `{c12}`, so that it cannot be taken for a name.
   */
  name: string;
  output?: string;
}

export type BinaryOperator = '+' | '-' | '*' | '/' | '^';
export type CompareOperator = '<' | '<=' | '=' | '>=' | '>' | '<>';

export type Expr =
  | Literal
  | Reference
  | ({ kind: 'text'; text: string } & Span)
  | ({ kind: 'call'; fn: string; args: Expr[] } & Weighed & Span)
  | ({ kind: 'negate'; of: Expr } & Span)
  | ({ kind: 'group'; of: Expr } & Span) // parentheses, kept for display
  | ({ kind: 'binary'; op: BinaryOperator; left: Expr; right: Expr } & Span)
  | ({ kind: 'compare'; op: CompareOperator; left: Expr; right: Expr } & Weighed & Span);

/** What is settled by its size where it is nearly equal: the largest operand that entered, where other formulas have to tell it. */
interface Weighed {
  scale?: Expr;
}

/** Ends of a spread relative to the value it stands behind, in SI; `percent` ends are fractions of that value. */
export interface Spread {
  low: number;
  high: number;
  percent: boolean;
  /** `±` (a tolerance, or in the role measured an expanded uncertainty), upper and lower deviations, or an ISO 286 class. */
  form: 'within' | 'deviations' | 'class';
  /** Coverage factor where the text gives one: (k=2). */
  k?: number;
  /** ISO 286 class as written, e.g. `H7`. */
  designation?: string;
  /** The unit it brings, behind what is not known before computing. */
  unit?: { symbol: string; label: string; dimension: Dimension };
}

/** A gauge set to a known size and read in its own divisions from there: `set 1.7500 in, +14 div of .0001 in`. */
export interface GaugeSetting {
  size: Literal;
  /** Divisions read, signed, in the order of the readings. */
  divisions: number[];
  division: Literal;
}

export type Entry =
  | { kind: 'blank' }
  | {
      kind: 'value';
      value: Literal;
      spread?: Spread /** total indicator reading: twice the offset */;
      tir?: boolean;
      set?: GaugeSetting;
    }
  | { kind: 'range'; low: Literal; high: Literal }
  /** Readings by station along the length, then by direction; one station unless the text has `|`. */
  | { kind: 'readings'; stations: Literal[][]; spread?: Spread; set?: GaugeSetting }
  /** `50H7/g6`: a nominal with a hole class and a shaft class. */
  | { kind: 'fit'; nominal: Literal; hole: string; shaft: string }
  /** A row of a table named by its designation: `#7`, `F drill`, `3/8-16 UNC-2B`, `M8x1.25`; `value` is its size. */
  | { kind: 'designation'; table: 'drill' | 'thread'; key: string; value: Literal }
  /** `20 under`: how far below (or over) the original size; `value` is signed. */
  | { kind: 'offset'; value: Literal }
  | { kind: 'formula'; expr: Expr; spread?: Spread };

export interface ParsedEntry {
  entry: Entry;
  problems: Problem[];
  /** What the sheet shows beside an entry so that a misreading is seen: `1.125 in` for `1 1/8`, `0.201 in` for `#7`. */
  echo?: string;
  /** The text as it is stored: a bare number has got its unit. Same as the input where nothing was added. */
  committed: string;
}

/** What a formula's value is, without computing it. `dimension` absent means not known yet: it fits everything. */
export type ValueType =
  | { kind: 'quantity'; dimension?: Dimension; point?: boolean; sort?: Sort }
  | { kind: 'logical' }
  | { kind: 'text' };

/** What the dimension check asks of its surroundings. */
export interface Scope {
  /** Type of `name` or `name.output`, or the problem with it (unknown name, unknown output ...). */
  typeOf(ref: Reference): ValueType | Problem;
  /** True when a library cell's input was left blank: ISBLANK is settled before computing. */
  isBlank?(name: string): boolean | undefined;
}
