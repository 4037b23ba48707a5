import { digitsFor } from '../../../shared/quantities/figures.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { fromSI, type Unit } from '../../../shared/units/unit.ts';

/** One line of a sheet with the figures it stands at, for people who go on in another program. */
export interface ExportLine {
  /** The cell, and which output of it; `value` for a plain one. */
  cell: CellRecord;
  output: string;
  /** As printed; empty for headings, remarks and further outputs of a cell. */
  number: string;
  /** As formulas call it: `bush_od`, `press.close_in`. */
  name: string;
  label: string;
  role: string;
  entry: string;
  /** What stands, SI, with its worst case; absent where there is none. */
  figure?: { value: number; low: number; high: number };
  unit: Unit;
  /** The value stands as its own formula gives it: neither measured nor issued. */
  planned: boolean;
  check: string;
}

export const COLUMNS = [
  'number',
  'name',
  'label',
  'role',
  'entry',
  'value',
  'unit',
  'low',
  'high',
  'check',
] as const;

/** Places behind the point that the spread of a figure supports. */
export function placesOf({ value, low, high }: NonNullable<ExportLine['figure']>, unit: Unit): number {
  const half = (high - low) / 2;
  const spread = half > Math.abs(value) * 1e-13 ? half : undefined;
  return Math.min(Math.max(digitsFor(spread, unit, value), 0), 15);
}

/** A number that every program reads: a point, no signs but the minus, as many places as are supported. */
export function plainNumber(si: number, unit: Unit, places: number): string {
  const value = fromSI(si, unit);
  if (!Number.isFinite(value)) return '';
  return Math.abs(value) >= 1e15 ? String(value) : value.toFixed(places);
}
