import type { Dimension } from '../dimension.ts';
import { numberRatio, over, plus, type Ratio, ratioNumber, readRatio, times } from './exact.ts';

/** A unit as plain data: it survives a message to a worker and JSON. */
export interface Unit {
  /** As it is typed and stored: `in`, `lbf.ft`, `W/(m.K)`. */
  symbol: string;
  dimension: Dimension;
  /** One unit in SI base units, the nearest double; for quick work over many values, else use {@link toSI}. */
  factor: number;
  /** The same, exactly: `127/5000`. */
  ratio: string;
  /** Points only: SI = (value + offset) x factor. */
  offset?: number;
  /** A point on a temperature scale (20 degC), not a difference. */
  point: boolean;
  /** For people: `°F`, `µm`, `lbf·ft`. */
  label: string;
}

const ratios = new Map<string, Ratio>();

/** Exact factor of a unit. */
export const unitRatio = (unit: Unit): Ratio => {
  let found = ratios.get(unit.ratio);
  if (!found) {
    found = readRatio(unit.ratio) ?? numberRatio(unit.factor);
    if (ratios.size > 2000) ratios.clear();
    ratios.set(unit.ratio, found);
  }
  return found;
};

/**
 * SI value, rounded once: `value` stands for the shortest decimal that reads as it, and the product with the exact
 * factor is rounded to the nearest double. So 2.2515 in is the same double as 57.1881 mm.
 */
export const toSI = (value: number, unit: Unit): number => {
  if (!Number.isFinite(value)) return value;
  const typed = numberRatio(value);
  return ratioNumber(times(unit.offset ? plus(typed, numberRatio(unit.offset)) : typed, unitRatio(unit)));
};

/** Value in `unit`, rounded once; what was typed with up to 15 digits comes back as it was. */
export const fromSI = (si: number, unit: Unit): number => {
  if (!Number.isFinite(si)) return si;
  const value = over(numberRatio(si), unitRatio(unit));
  return ratioNumber(unit.offset ? plus(value, numberRatio(-unit.offset)) : value);
};
