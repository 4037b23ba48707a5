/**
 * What every handbook table is made of. Tables hold SI base units as doubles, worked out as value times unit, so that
 * `inch(0.375)` is the same double wherever it is written.
 */

/** How a number came into a table: read in print, worked out from a printed rule, or remembered. */
type Grade = 'seen' | 'computed' | 'memory';

/** A published or remembered number with its range. SI base units. */
export interface Property {
  value: number;
  low: number;
  high: number;
  /** degC range for which it holds */
  temperature?: readonly [number, number];
  source: string;
  grade: Grade;
}

/** Source and grade, written once and given to many numbers. */
export interface Origin {
  source: string;
  grade: Grade;
}

export const seen = (source: string): Origin => ({ source, grade: 'seen' });
/** Marked in the text too, so that a reader of the source alone is not misled. */
export const fromMemory = (source: string): Origin => ({ source: `from memory: ${source}`, grade: 'memory' });

/** `value` and its ends in one unit, `unit` of SI each. */
export const property = (
  unit: number,
  value: number,
  range: readonly [number, number],
  origin: Origin,
  temperature?: readonly [number, number],
): Property => ({
  value: value * unit,
  low: range[0] * unit,
  high: range[1] * unit,
  ...(temperature ? { temperature } : {}),
  source: origin.source,
  grade: origin.grade,
});

export const inch = (x: number): number => x * 0.0254;
/** Thousandths of an inch. */
export const thou = (x: number): number => x * 0.0000254;
export const mm = (x: number): number => x * 0.001;
export const um = (x: number): number => x * 0.000001;
export const celsius = (x: number): number => x + 273.15;

/** A size that is not in a table: what was asked, and what to do. */
export interface TableProblem {
  problem: string;
}

export const isProblem = (x: object): x is TableProblem => 'problem' in x;

/** Rows of a whitespace-separated text, blank lines and `#` lines left out. */
export const rowsOf = (text: string): string[][] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => line.split(/\s+/));
