import type { Reference } from '../../language/syntax/syntax.ts';

declare const isRowKey: unique symbol;

/**
 * Key of a row. Made and read in this file alone: a cell's id, then which output or input of a library cell, then which
 * part of what belongs to it, each behind a stroke. Strokes and control characters of an id or a name are written
 * otherwise, so no text of a file spells a key, and no two rows have the same one.
 */
export type RowKey = string & { readonly [isRowKey]: true };

/** Figures that a set of readings has beside its mean, which is the row of the set itself. */
export const READING_FIGURES = ['least', 'greatest', 'out_of_round', 'taper', 'range'] as const;
export type ReadingFigure = (typeof READING_FIGURES)[number];

/** Limits of an output, and the margins to them. */
export type LimitPart =
  | 'lower'
  | 'upper'
  | 'wear'
  | 'above-lower'
  | 'below-upper'
  | 'below-wear'
  | 'above-wear';

/** What a row is of the row it belongs to. */
export type RowPart =
  | ReadingFigure
  | LimitPart
  /** The value measured off the part, where the row itself is the plan. */
  | 'measured'
  /** Measured less planned. */
  | 'difference'
  /** What the formula of an issued size would now give. */
  | 'replanned'
  /** The number as read, before corrections and doubt. */
  | 'read'
  /** What the mean of a set of readings is known to, at 95 %. */
  | 'doubt'
  /** A formula, before its spread. */
  | 'formula'
  /** The tolerance a size worked out is cut to. */
  | 'cut'
  /** The spread a formula of the library has of its own. */
  | 'spread'
  /** Doubt of a set of readings: of the mean, of a single one, of a difference of two. */
  | 'mean-doubt'
  | 'single-doubt'
  | 'difference-doubt'
  /** Scatter of a set of readings by itself, where it is more than its gauge's. */
  | 'own-doubt'
  /** How far off its mean may be for the form of the surface; the source of it. */
  | 'form'
  | 'form-doubt'
  /** Source of what was not read of the form, and how far it reaches: of the extremes, of taper, of out-of-round. */
  | 'unread'
  | 'beyond'
  | 'taper-beyond'
  | 'round-beyond'
  /** Source of what the least and the greatest of several readings are too far out by for their scatter; how far it reaches. */
  | 'picked'
  | 'outermost'
  /** A doubt that is not known. */
  | 'unknown'
  /** Temperature of the part as it was read. */
  | 'temperature'
  /** What must hold for a library cell, by number, and all of it. */
  | 'validity';

const MARK = '/';
const RESERVED = /[%/\p{Cc}]/gu;

const written = (text: string): string =>
  text.replace(RESERVED, (one) => `%${one.charCodeAt(0).toString(16).padStart(2, '0')}`);
const unwritten = (text: string): string =>
  text.replace(/%([0-9a-f]{2})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)));

/** The value of a plain cell; of a library cell no row, but what its rows begin with. */
export const cellRow = (cell: string): RowKey => written(cell) as RowKey;

export const outputRow = (cell: string, output: string): RowKey =>
  `${written(cell)}${MARK}out.${written(output)}` as RowKey;

export const inputRow = (cell: string, input: string): RowKey =>
  `${written(cell)}${MARK}in.${written(input)}` as RowKey;

export const partRow = (of: RowKey, part: RowPart): RowKey => `${of}${MARK}${part}` as RowKey;

/** What must hold for a library cell: one condition, or all of them. */
export const validityRow = (cell: string, number?: number): RowKey =>
  `${written(cell)}${MARK}${number === undefined ? '' : `${number}.`}validity` as RowKey;

/** The row that a reference means: assembling writes the key in place of the name. */
export const keyOf = (ref: Reference): RowKey => ref.name as RowKey;

/** Id of the cell that a row belongs to. */
export const cellOf = (key: RowKey): string => {
  const end = key.indexOf(MARK);
  return unwritten(end < 0 ? key : key.slice(0, end));
};

/** Name of the input that a row belongs to. */
export const inputOf = (key: RowKey): string | undefined => {
  const [, side] = key.split(MARK, 2);
  return side?.startsWith('in.') ? unwritten(side.slice(3)) : undefined;
};

/** The last part of a key; none where it is the row of a cell, an output or an input itself. */
const lastOf = (key: RowKey): string => {
  const mark = key.lastIndexOf(MARK);
  return mark < 0 ? '' : key.slice(mark + 1);
};

export const isPart = (key: RowKey, part: RowPart): boolean => lastOf(key) === part;

export const isValidity = (key: RowKey): boolean => /^(\d+\.)?validity$/.test(lastOf(key));

const FIGURES: ReadonlySet<string> = new Set(READING_FIGURES);

/** The row a part belongs to. */
const whole = (key: RowKey): RowKey => key.slice(0, key.lastIndexOf(MARK)) as RowKey;

/** Row of the set of readings that a row of its figures belongs to; any other row itself. */
export const setOf = (key: RowKey): RowKey => (FIGURES.has(lastOf(key)) ? whole(key) : key);

/** Row of the plan that a measured value stands beside; undefined for any other row. */
export const planOf = (key: RowKey): RowKey | undefined => (isPart(key, 'measured') ? whole(key) : undefined);
