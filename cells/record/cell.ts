import type { CellRecord } from '../../shared/sheet/format.ts';
import type { Property } from '../tables/table.ts';
import type { Caution } from './caution.ts';

/** Reads a property off a table row chosen by one of the cell's choice inputs. */
export interface TableColumn {
  /** Name of the choice input that holds the key. */
  choice: string;
  /** Column of the table row. */
  column: string;
}

export interface CellInput {
  name: string;
  label: string;
  /** Kind of quantity (`shared/quantities/quantities.ts`). Absent for a record or a choice. */
  quantity?: string;
  /** This input takes the name of a cell of that kind, whose outputs the formulas read as `input.output`. */
  record?: string;
  /** Of a gauge: the inputs and outputs of this cell that are sizes read with it, what of them is its own travel, and one division. */
  reads?: { sizes: readonly string[]; travel?: string; division?: string };
  /** This input takes a key of a table (`materials`, `gauges` ...). */
  choice?: string;
  /** A text of pairs of these two kinds of quantity, `2 mm: 1.2 kN; 4 mm: 2.3 kN`, which may be typed or pasted in other ways too. */
  pairs?: readonly [string, string];
  /**
   * Entry used while the user gives none: a literal with its spread, or a formula over the other inputs. An input
   * without a default must be filled in, unless it is `optional`.
   */
  default?: string;
  /** May stay blank; formulas ask with ISBLANK(input), which is settled before computing, so the other branch is not needed. */
  optional?: boolean;
  /** Entries `[low, high]`; a value outside is questioned, not refused. */
  sensible?: readonly [string, string];
  /** The role its literal entries take, for the meaning of `±`: a tolerance (given) unless said otherwise. */
  role?: 'given' | 'measured' | 'chosen';
  /**
   * How it counts for proof, where its role does not tell. `aside`: a size of measuring equipment (wires, balls, blocks), or
   * one by which a thing is named (a pitch, a flank angle). `measured`: it is what was read.
   */
  counts?: 'aside' | 'measured';
  /**
   * It may be kept by the shop, the same from job to job. `filled`: equipment, filled in when a job begins. `offered`: stock,
   * offered first where such a one is chosen, for no job tells which.
   */
  ofShop?: 'filled' | 'offered';
  /** Where the number comes from when it is the default. */
  source?: string;
  hint?: string;
}

export interface CellOutput {
  name: string;
  label: string;
  quantity: string;
  /** In the sheet's own language, over the inputs and the other outputs by bare name. */
  formula?: string;
  /** Or read from a table; then the output brings a source of spread of its own. */
  table?: TableColumn;
  /** A source of spread the output adds to its formula: ends relative to the formula's value, as formulas. */
  spread?: {
    low: string;
    high: string;
    distribution: 'rectangular' | 'normal' | 'triangular' | 'arcsine';
    label: string;
  };
  /**
   * A decision (the next standard undersize, so many shims): the number is held, computed at nominal only, and the doubt
   * of what it was decided from does not move it.
   */
  held?: boolean;
  /**
   * How it follows from the inputs. `geometry`: from sizes alone, so that it is as certain as they are. `model`: a law of
   * nature, a figure of a material or a rule of the trade stands between, so that it holds by calculation until it is
   * measured itself; a property read off a table is a model's. What measuring equipment and the correction to the reference
   * temperature do to a size is geometry.
   */
  basis: 'geometry' | 'model';
  /** Shown without unfolding. */
  face?: boolean;
  /**
   * A size a part is cut or comes to, which is read off it with a gauge: the place for what was measured is there without
   * unfolding.
   */
  ofPart?: boolean;
  /** Limits every use of the cell has, as formulas; a sheet may put its own in their place. `wear`: in service. */
  limits?: { lower?: string; upper?: string; wear?: string; metalOn?: 'low' | 'high' };
  /** Unit to show it in, by system, where the kind of quantity's own is not the trade's. */
  display?: { in?: string; mm?: string };
  hint?: string;
}

/** Something that must hold for the cell to be believed. */
export interface Validity {
  /** A comparison over inputs and outputs; where it does not hold, `otherwise` is said. */
  holds: string;
  otherwise: string;
  /** `error`: no result is given. `caution`: the result stands, and says so. */
  grade: 'error' | 'caution';
}

export interface WorkedExample {
  title: string;
  source: string;
  /** seen in print; computed by an independent method; from memory; or recomputed by a second method of our own. */
  grade: 'seen' | 'computed' | 'memory' | 'recomputed';
  /** Entries by input; for a record input, an object of entries by output name. */
  inputs: Record<string, string | Record<string, string>>;
  /** Entry expected by output, and how near (relative unless `within` has a unit). */
  expect: Record<string, { value: string; within: string | number }>;
}

export type Shape =
  | { kind: 'rect'; x: number; y: number; width: number; height: number; fill?: Fill }
  | {
      kind: 'line';
      x1: number;
      y1: number;
      x2: number;
      y2: number;
      style?: 'outline' | 'centre' | 'hidden' | 'thin';
    }
  | { kind: 'circle'; x: number; y: number; r: number; fill?: Fill }
  | { kind: 'path'; d: string; fill?: Fill }
  /** A dimension between two points, written with the value of an output or input. */
  | {
      kind: 'dimension';
      x1: number;
      y1: number;
      x2: number;
      y2: number;
      offset: number;
      of: string;
      label?: string;
    }
  | { kind: 'text'; x: number; y: number; text: string; anchor?: 'start' | 'middle' | 'end' };

/** Hatching by member, after drawing practice: sections of neighbours are hatched in opposite directions. */
export type Fill = 'none' | 'section-a' | 'section-b' | 'section-c' | 'gap' | 'paper';

export interface Drawing {
  width: number;
  height: number;
  shapes: Shape[];
  /** Said under the drawing, e.g. `interference drawn 200 times its size`. */
  exaggeration?: string;
}

/** Value in SI by input or output name; absent where it is not known yet. */
export type DrawingValues = Readonly<Record<string, number | undefined>>;

/** One kind of cell of the library: everything about it in one record. */
export interface CellKind {
  key: string;
  edition: number;
  title: string;
  /** One line: what it is for. */
  purpose: string;
  group:
    | 'measuring'
    | 'materials'
    | 'bore and shaft'
    | 'fits'
    | 'clearance'
    | 'heat'
    | 'threads'
    | 'machine work';
  inputs: readonly CellInput[];
  outputs: readonly CellOutput[];
  /** Lines it is put in with, itself among them, where it judges a whole section. */
  section?: readonly Partial<CellRecord>[];
  validity?: readonly Validity[];
  assumptions: readonly string[];
  /** Each with edition. */
  sources: readonly string[];
  cautions: readonly Caution[];
  examples: readonly WorkedExample[];
  drawing?: (values: DrawingValues) => Drawing | undefined;
}

/** `compares`: with what it is set in, size by size. `travels`: its range is how far it moves, at whatever size. */
export type GaugeUse = 'compares' | 'travels';

/** Row of a table that a choice input can name. */
export interface ChoiceRow {
  key: string;
  name: string;
  /** Keys under which sheets of earlier editions chose it: read as its own, and left in the sheet as they stand. */
  formerKeys?: readonly string[];
  columns: Readonly<Record<string, Property | undefined>>;
  /** Of a gauge: the usual measuring range of its kind, m, and how it comes by a size. */
  range?: readonly [number, number];
  use?: GaugeUse;
  /** What to be careful of with it, or to know; said wherever the row is chosen. */
  note?: string;
}

export interface ChoiceTable {
  title: string;
  rows: readonly ChoiceRow[];
}

/** How a function moves with one of its numbers, the others standing still: `either way` where they decide which. */
export type Motion = 'rising' | 'falling' | 'either way';

/**
 * What the worst case goes by: how a function of the trade moves with its numbers. One that says nothing has no bounds once
 * a number in it has a spread.
 */
export interface Movement {
  /**
   * By argument. `either way`: it rises all along or falls all along, and which of the two shows at the corners of any box.
   */
  moves?: Readonly<Record<string, Motion>>;
  /** Of a function of one number, by its texts: where it may jump, SI; between two of these it moves as said. */
  jumps?: (...texts: string[]) => readonly number[];
  /** It moves by steps. */
  steps?: true;
  /** Bounds of its own, in place of all that: from the ends of each number, and its texts. */
  bounds?: (
    ...args: readonly (readonly [number, number] | string)[]
  ) => readonly [number, number] | { message: string };
}

/** A pure function of SI numbers offered to formulas beside the general ones. Never throws; gives a message instead of a number. */
export interface TradeFunction {
  name: string;
  purpose: string;
  /** Kind of quantity of each argument and of the result. */
  takes: readonly ({ name: string; quantity: string } | { name: string; text: true })[];
  gives: string;
  /** Numbers in SI; a `text` argument arrives as a string (a literal in quotes, or the value of a choice input). */
  compute: (...args: readonly (number | string)[]) => number | { message: string };
  /** Of a function that takes numbers. */
  movement?: Movement;
  /**
   * What it gives tells of its numbers themselves, as how far a hole lies beyond a class does. What any other gives is of a part
   * that is named and not there: a size still to be made.
   */
  compares?: true;
  source: string;
}

/** Checks the record's shape at compile time and nothing else. */
export const defineCell = (kind: CellKind): CellKind => kind;
