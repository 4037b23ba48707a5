import { usualPlaces } from '../../../shared/quantities/figures.ts';
import { fromSI, toSI, type Unit } from '../../../shared/units/units.ts';
import { aroundOf } from '../workback/range.ts';
import type { Movable } from './input.ts';

/** A range of values, SI. */
export interface Range {
  low: number;
  high: number;
}

/**
 * Where an input is looked for: between its own limits and half as far again; else as work back has it, and
 * in its usual range in the library. Undefined where nothing tells.
 */
export function rangeFor(
  input: Movable,
  { lower, upper }: Partial<Record<'lower' | 'upper', number>>,
): Range | undefined {
  const { value, unit, quantity, usual } = input;
  const isBetween = lower !== undefined && upper !== undefined && upper > lower;
  const half = isBetween ? (upper - lower) / 2 : 0;
  const ends = isBetween
    ? [lower - half, upper + half]
    : [
        ...(value === undefined ? [] : aroundOf(value, unit.point ? 'temperature' : quantity, 0)),
        ...(usual ?? []),
      ];
  if (ends.length === 0) return undefined;
  const all = [...ends, ...[value, lower, upper].filter((one) => one !== undefined)];
  return { low: Math.min(...all), high: Math.max(...all) };
}

/** A window is told in so many steps from end to end, where the unit is read so finely; in no fewer than a tenth of them. */
const STEPS = 100;
const FEWEST = 10;
const MOST_PLACES = 9;

/** Places of a unit in which a window of that width is told: those the unit is read to, one more or as many as it takes where it is narrow. */
export function placesFor(width: number, unit: Unit): number {
  const wide = Math.abs(fromSI(width, { ...unit, offset: 0, point: false }));
  const places = (steps: number): number =>
    Number.isFinite(wide) && wide > 0 ? Math.ceil(-Math.log10(wide / steps)) : 0;
  const usual = usualPlaces(unit);
  const wanted =
    usual === undefined ? places(STEPS) : Math.max(usual, Math.min(usual + 1, places(STEPS)), places(FEWEST));
  return Math.min(MOST_PLACES, Math.max(0, wanted));
}

/** What arithmetic leaves of a step. */
const HAIR = 1e-6;

/** Values in a unit, whole steps of its last place apart. */
export class Steps {
  private readonly per: number;

  constructor(
    private readonly unit: Unit,
    readonly places: number,
  ) {
    this.per = 10 ** places;
  }

  /** The value of a step, the double that its decimal reads as. */
  value(step: number): number {
    return toSI(Number((step / this.per).toFixed(this.places)), this.unit);
  }

  /** The last step at or below a value. */
  below(si: number): number {
    return Math.floor(fromSI(si, this.unit) * this.per + HAIR);
  }

  /** The first step at or above a value. */
  above(si: number): number {
    return Math.ceil(fromSI(si, this.unit) * this.per - HAIR);
  }
}
