/**
 * A problem is a value, never a thrown exception: something in a sheet that keeps a figure from being known, or a
 * question the sheet has to ask. One function builds it ({@link problem}); `shared/quantities/wording.ts` words it.
 */
export type ProblemKind =
  | 'blank' // an input is missing; everything below waits
  | 'syntax' // the text cannot be read
  | 'ask' // the text can be read in more than one way; `choices` offers the readings
  | 'dimension' // two quantities do not go together
  | 'unknown-name'
  | 'unknown-unit'
  | 'unknown-function'
  | 'unknown-key' // a table has no such row
  | 'ring' // names that depend on each other in a circle
  | 'arithmetic' // division by zero, root of a negative number, overflow
  | 'range' // a value outside what the cell can take
  | 'too-big' // entry too long or nested too deep
  | 'fault' // the program failed over it: no fault of the sheet
  | 'upstream'; // begins in another cell: see `origin`

/** A ready-made answer the page can offer with one key. */
export interface Remedy {
  /** What the button says, in trade words. */
  label: string;
  /** The whole entry to put in place of the present one. */
  entry?: string;
  /** What the entry makes of the cell: its kind of quantity. */
  quantity?: string;
  /** Or a sheet setting to fix once for the whole sheet. */
  setting?: { name: 'ton' | 'tenth'; value: string };
}

export interface Problem {
  kind: ProblemKind;
  /** One sentence: what is wrong, both sides where there are two, and what to do. */
  message: string;
  /** Name (or label) of the cell where it began, as shown to people. */
  origin?: string;
  /** Id of that cell. */
  originId?: string;
  /** Which field of the cell: entry, tolerance, limits.lower, measured, inputs.length ... */
  field?: string;
  /** Half-open span of characters within that field. */
  from?: number;
  to?: number;
  choices?: Remedy[];
  /** What went wrong in computing, where that is one of the things the program has its own words for. */
  cause?: 'division' | 'overflow';
  /** What a function said of its arguments, without its name. */
  said?: string;
  /** A blank that may stay blank: what depends on it inside its own cell is idle, not waiting. */
  optional?: boolean;
  /** What begins in another cell: an entry or an answer is missing there; nothing is wrong. */
  waits?: boolean;
}

export const problem = (
  kind: ProblemKind,
  message: string,
  more: Partial<Omit<Problem, 'kind' | 'message'>> = {},
): Problem => ({
  kind,
  message,
  ...more,
});
