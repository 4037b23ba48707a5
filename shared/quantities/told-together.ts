import type { Against } from '../checks/band.ts';
import { fitsDecimals, magnitude, roundedText } from '../rounding.ts';
import { fromSI, toSI, type Unit } from '../units/units.ts';
import { differenceUnit, digitsFor, MAX_PLACES, usualPlaces } from './figures.ts';

/** A figure with its band, SI, and the limits it is told beside. */
export interface Beside {
  value: number;
  low: number;
  high: number;
  /** The verdicts that what is printed must not contradict. */
  against?: readonly Against[];
}

/** How a figure and its limits are rounded, told beside each other. */
export interface Together {
  places: number;
  /** The value goes to its other neighbour in the last place, not to the nearest. */
  isOther: boolean;
  /** Limits that an end of the band stands on are rounded as the verdict has it: away from a band within them, else to it. */
  isApart: boolean;
}

/** Places that may be added so that what is printed does not contradict a verdict. */
const MORE_PLACES = 5;
/** Figures of a limit in a unit that has no usual places. */
const LIMIT_FIGURES = 6;
/** Share of the way from a limit to an end of the band that rounding may take. */
const APART = 0.25;
/** Nearer than any place tells, in units; and for large figures, than arithmetic does. */
const TOUCHING = { units: 2 * 10 ** -MAX_PLACES, share: 1e-9 };
/** Share of the last place that arithmetic may leave behind a figure that has no more places. */
const HAIR = 1e-9;

/** An end of a spread to `places`, never nearer than it is; SI in, SI out. */
export const outward = (si: number, unit: Unit, places: number, way: 1 | -1, value: number): number => {
  const lasts = fromSI(si, unit) * 10 ** places;
  const hair = Math.max(1, Math.abs(lasts)) * HAIR + Math.abs(fromSI(value, unit)) * 10 ** places * 4e-15;
  const whole = way > 0 ? Math.ceil(lasts - hair) : Math.floor(lasts + hair);
  return Number.isSafeInteger(whole) ? toSI(whole / 10 ** places, unit) : si;
};

/** The nearest number of so many places, or its neighbour on the other side of `x`. */
const neighbour = (x: number, places: number, isOther: boolean): number => {
  const nearest = Number(roundedText(x, places));
  if (!isOther || fitsDecimals(x, places)) return nearest;
  return Number(roundedText(nearest + (x > nearest ? 1 : -1) * 10 ** -places, places));
};

/** A value, on the scale of its unit, as it is told. */
export const toldValue = (x: number, { places, isOther }: Together): number => neighbour(x, places, isOther);

/**
 * A limit, on the scale of its unit, as it is told, and its places: as many as it has where that is about what the unit
 * is read to; else rounded there, but never so that it is told nearer to what stands beside it, or beyond it. Where an
 * end of the band stands on it, so that no place tells them apart, it takes the places of the figure.
 */
export const toldLimit = (
  si: number,
  unit: Unit,
  beside: Beside | undefined,
  together: Together | undefined,
): { value: number; places: number } => {
  const x = fromSI(si, unit);
  const usual = usualPlaces(unit);
  const few = Math.max(0, LIMIT_FIGURES - 1 - magnitude(x));
  const most = usual === undefined ? few : Math.max(usual + 1, Math.min(MAX_PLACES, few - 3));
  const first = usual ?? 0;
  const ends = beside ? [beside.value, beside.low, beside.high].filter(Number.isFinite) : [];
  const distances = ends.map((end) => Math.abs(fromSI(end, unit) - x));
  const touch = Math.max(TOUCHING.units, TOUCHING.share * Math.abs(x));
  const away = Math.min(...distances.filter((one) => one > touch));
  // What arithmetic leaves of nothing is nothing.
  if (usual !== undefined && Math.abs(x) < TOUCHING.units / 2) return { value: 0, places: first };
  const isTouched = together !== undefined && distances.some((one) => one <= touch);
  const isShort = fitsDecimals(x, most);
  const least = isTouched && !isShort ? Math.max(first, together.places) : most;
  for (let places = first; places <= Math.max(MAX_PLACES, least); places += 1) {
    const value = Number(roundedText(x, places));
    if (fitsDecimals(x, places)) return { value, places };
    if (places < least || Math.abs(value - x) > APART * away) continue;
    const own = beside?.against?.find(({ lower, upper }) => lower === si || upper === si);
    const up = (own?.upper === si) === /in|near/.test(own?.grade ?? '');
    const isOther = isTouched && together.isApart && up !== value > x;
    return { value: neighbour(x, places, isOther), places };
  }
  const places = Math.max(MAX_PLACES, least);
  return { value: Number(roundedText(x, places)), places };
};

/** The ends as they are printed, on the scale of the unit, and whether they say of the limits what the verdict says. */
const isTrue = (beside: Beside, unit: Unit, together: Together): boolean => {
  const { value, low, high, against = [] } = beside;
  const { places } = together;
  const step = differenceUnit(unit);
  const printed = toldValue(fromSI(value, unit), together);
  const hair = 10 ** -places * 1e-6;
  const ends = {
    from: printed + fromSI(outward(low - value, step, places, -1, value), step),
    to: printed + fromSI(outward(high - value, step, places, 1, value), step),
  };
  const told = (si: number | undefined): number | undefined =>
    si === undefined ? undefined : toldLimit(si, unit, beside, together).value;
  return against.every((one) => {
    const { from, to } = one.isBare ? { from: printed, to: printed } : ends;
    const lower = told(one.lower) ?? Number.NEGATIVE_INFINITY;
    const upper = told(one.upper) ?? Number.POSITIVE_INFINITY;
    // What touches a limit is inside: a hair of arithmetic must not tell otherwise.
    const isInside = from >= lower - hair && to <= upper + hair;
    const isOutside = to < lower - hair || from > upper + hair;
    return one.grade === 'out' ? isOutside : one.grade === 'open' ? !isInside && !isOutside : isInside;
  });
};

/**
 * How a figure, its spread and the limits beside it are rounded: in the places the spread supports, and in as many more
 * as it takes for what is printed to say of the limits what the verdict says.
 * @param spread half the width of the band, SI, where it has one
 */
export const toldTogether = (beside: Beside, spread: number | undefined, unit: Unit): Together => {
  const first = digitsFor(spread, unit, beside.value);
  const told = (more: number, isOther = false, isApart = false): Together => ({
    places: first + more,
    isOther,
    isApart,
  });
  const isHeld = beside.against?.length && Number.isFinite(fromSI(beside.value, unit)) && first <= MAX_PLACES;
  if (!isHeld || isTrue(beside, unit, told(0))) return told(0);
  // To the nearest first; in a further place the other neighbour is near enough.
  const ways = [told(1), told(2)];
  const most = Math.max(MORE_PLACES, MAX_PLACES + 2 - first);
  for (let more = 1; more <= most; more += 1)
    for (const isApart of [false, true])
      for (const isOther of [false, true]) ways.push(told(more, isOther, isApart));
  return ways.find((way) => isTrue(beside, unit, way)) ?? told(MORE_PLACES);
};
