/** The file two shops exchange: format `fitwright-sheet`, version 2. Its JSON Schema is `sheet.schema.json` beside this file. */

export const FORMAT = 'fitwright-sheet';
export const VERSION = 2;

/** Lines a sheet may have, made or read. */
export const MAX_LINES = 10_000;

/** Characters a file may have, made or read. */
export const MAX_CHARACTERS = 20_000_000;

/** How a cell comes by its value; `cell` is one of the library in `cells/kinds`, `section` a heading, `remark` text. */
export type Role = 'given' | 'measured' | 'chosen' | 'worked' | 'cell' | 'section' | 'remark';

/**
 * How the guard band of a check is taken (see `shared/check`): the worst case; ISO 14253-1:2013, expanded uncertainty
 * k = 2; ISO 14253-1:2017 default, 95 % conformance probability; or simple acceptance, with no allowance for measuring error.
 */
export type DecisionRule = 'worst-case' | 'iso14253-2013' | 'iso14253-2017' | 'simple';

/** ISO 7200 title block, as far as a repair shop fills one in. All free text. */
export interface TitleBlock {
  title: string;
  part?: string;
  machine?: string;
  customer?: string;
  material?: string;
  drawnBy?: string;
  checkedBy?: string;
  revision?: string;
  /** ISO 8601 date. */
  date?: string;
  number?: string;
  /** An entry, `20 degC` unless said otherwise (ISO 1). */
  referenceTemperature?: string;
  note?: string;
  tags?: string[];
}

export interface SheetUnits {
  /** What a bare length is, and what lengths are shown in. */
  length: 'in' | 'mm';
  /** What a bare temperature is. Follows `length` when absent: degF with inches, degC with millimetres. */
  temperature?: 'degC' | 'degF';
  /** Asked once a sheet, when first used. */
  ton?: 'short_ton' | 'long_ton' | 'tonne';
  tenth?: 'tenth_in' | 'tenth_mm';
  /** Show the other system beside the preferred one. */
  both?: boolean;
}

/** Each an entry or a formula, as text. */
export interface Limits {
  lower?: string;
  upper?: string;
  /** The limit a part in service may wear to, where a maker gives one. */
  wear?: string;
  /** In a template: to be filled in by the next user; what an emptied limit might be. */
  lowerExample?: string;
  upperExample?: string;
  wearExample?: string;
  /** The side on which a miss can still be reworked: a bore small (`low`), a shaft big (`high`). */
  metalOn?: 'low' | 'high';
  /** Overrides the sheet's rule for this line. */
  rule?: DecisionRule;
}

/** What was read off the real part: an entry (a list of readings too) and the gauge it was read with. */
export interface Measured {
  entry: string;
  /** Name of a gauge cell. */
  gauge?: string;
  /** Part temperature at the reading, an entry. */
  at?: string;
  /** Name of the material cell of the part, for the correction to reference temperature. */
  material?: string;
  note?: string;
}

/** Settings of one output of a library cell. */
export interface OutputSettings {
  limits?: Limits;
  measured?: Measured;
  /** Unit to show it in. */
  display?: string;
  /** Unit it was shown in when the sheet's lengths were in the other system, where the way back does not lead to it. */
  displayOther?: string;
}

/** A slip the user has answered: `slip` is its key, `text` the entry it was asked about. */
export interface Dismissal {
  slip: string;
  text: string;
}

/** One of several ways to the same end. */
export interface Way {
  /** What the ways lead to: `taper of the arbor`. */
  to: string;
  /** Which of them this is: `over a sine bar`. */
  by: string;
}

export interface CellRecord {
  id: string;
  role: Role;
  /** Used in formulas. */
  name?: string;
  /** For people. */
  label?: string;
  /** Name of a kind of quantity (`shared/quantities/quantities.ts`); set at first entry and kept when emptied. */
  quantity?: string;
  /**
   * What the user typed, with names. A measured cell may hold a list: readings of one station separated by `;`,
   * stations along the length by `|`.
   */
  entry?: string;
  /** How well a chosen size can be cut: `+0.0005 -0 in`, `± 0.02 mm`, `H7`. */
  tolerance?: string;
  /** Name of the gauge cell a measured cell was read with, or a size to be cut is to be read with. */
  gauge?: string;
  /** Temperature of the part when it was read, an entry; absent means at reference temperature. */
  at?: string;
  /** Name of the material cell of the part, for the correction of a reading to reference temperature. */
  material?: string;
  limits?: Limits;
  /** Unit to show it in. */
  display?: string;
  /** Unit it was shown in when the sheet's lengths were in the other system, where the way back does not lead to it. */
  displayOther?: string;
  /** Planned is `entry`; this is what the part came out at. */
  measured?: Measured;
  /** The dimension as sent to the machine: an entry that re-planning does not move. */
  issued?: string;
  note?: string;
  /**
   * What the author says of how far it proves anything. `geometry`: the formula follows by geometry alone, whatever factors
   * stand in it. `equipment`: it is a size of measuring equipment (a wire, a ball, a block), not of a part.
   */
  basis?: 'geometry' | 'equipment';
  /** The way it belongs to, where several lead to one end: the line counts while that way is taken, or none is yet. */
  way?: Way;
  /** Formula and limits are the template author's; changing them asks first. */
  locked?: boolean;
  /** Its formula may lead back to it: the size is solved so that what comes out is what goes in. */
  solved?: boolean;
  /** In a template: must be filled in by the next user. */
  fill?: boolean;
  /** What an emptied cell of a template might hold. For a library cell, see `examples`. */
  example?: string;
  /** Library cells only: kind and edition, inputs and outputs by name. */
  kind?: string;
  edition?: number;
  inputs?: Record<string, string>;
  /** Emptied inputs of a library cell in a template. */
  examples?: Record<string, string>;
  outputs?: Record<string, OutputSettings>;
  dismissed?: Dismissal[];
}

/** A table value a sheet was computed with, kept so that a finished job keeps its numbers when the library moves on. SI. */
export interface KeptValue {
  table: string;
  key: string;
  column: string;
  value: number;
  low: number;
  high: number;
}

export interface SheetFile {
  format: typeof FORMAT;
  /** As read it is always the present one; older ones are brought up to it. */
  version: 1 | typeof VERSION;
  /**
   * What a reader must know to judge the sheet rightly, by name: a field that changes a verdict and that older editions would pass
   * over. One that lacks it refuses the sheet.
   */
  needs?: string[];
  /** True for a template. */
  template?: boolean;
  title: TitleBlock;
  units: SheetUnits;
  rule: DecisionRule;
  cells: CellRecord[];
  variants?: Array<{ name: string; entries: Record<string, string> }>;
  /** The way taken, by what the ways lead to: lines of the others are set aside and count no more. */
  ways?: Record<string, string>;
  /** The template this came from. */
  from?: { title: string; fingerprint: string };
  tables?: KeptValue[];
}
