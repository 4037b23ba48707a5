import type { Against, Band } from '../checks/band.ts';
import { fitsDecimals, magnitude, roundedText } from '../rounding.ts';
import { fromSI, toSI, type Unit } from '../units/units.ts';
import {
  behind,
  differenceUnit,
  digitsFor,
  type FormatOptions,
  formatNumber,
  LARGE,
  MAX_PLACES,
  type ShownFigure,
  usualPlaces,
} from './figures.ts';

/** A deviation of nothing keeps its sign, as drawings have it: +0.0005 -0.0000. */
const signed = (text: string, sign: string): string => (/^[+-]/.test(text) ? text : sign + text);

export interface FigureText {
  value: string;
  /** `± 0.0003`, `+0.0005 -0.0001`, or empty where there is none to show. */
  spread: string;
  /** Label of the unit. */
  unit: string;
  /** All of it on one line. */
  text: string;
}

/** Ends of the spread relative to the value, SI. */
const spreadOf = (figure: ShownFigure, options: FigureOptions): { below: number; above: number } => {
  const { low, high } =
    options.band ??
    (options.show === 'expanded'
      ? { low: figure.centre - 2 * figure.u, high: figure.centre + 2 * figure.u }
      : figure);
  return { below: low - figure.value, above: high - figure.value };
};

/** Share of the last place that arithmetic may leave behind a figure that has no more places. */
const HAIR = 1e-9;

/** An end of a spread to `places`, never nearer than it is; SI in, SI out. */
const outward = (si: number, unit: Unit, places: number, way: 1 | -1, value: number): number => {
  const lasts = fromSI(si, unit) * 10 ** places;
  const hair = Math.max(1, Math.abs(lasts)) * HAIR + Math.abs(fromSI(value, unit)) * 10 ** places * 4e-15;
  const whole = way > 0 ? Math.ceil(lasts - hair) : Math.floor(lasts + hair);
  return Number.isSafeInteger(whole) ? toSI(whole / 10 ** places, unit) : si;
};

export type FigureOptions = Omit<FormatOptions, 'spread' | 'sign'> & {
  show?: 'worst-case' | 'expanded';
  /** The band to show in place of either. */
  band?: Pick<Band, 'low' | 'high' | 'against'>;
};

/** Places that may be added so that what is printed does not contradict a verdict. */
const MORE_PLACES = 5;

/** A figure that a limit is read against: where it stands, and its band, SI. */
export interface Beside {
  value: number;
  low: number;
  high: number;
}

/** Figures of a limit in a unit that has no usual places. */
const LIMIT_FIGURES = 6;
/** Share of the way from a limit to an end of the band that rounding may take. */
const APART = 0.25;

/**
 * Places of a limit: as many as it has where that is about what the unit is read to; else rounded there, but never so
 * that it is told nearer to what stands beside it, or beyond it. An end that stands on it leaves it whole.
 */
const limitPlaces = (si: number, unit: Unit, beside: Beside | undefined): number => {
  const value = fromSI(si, unit);
  const usual = usualPlaces(unit);
  const few = Math.max(0, LIMIT_FIGURES - 1 - magnitude(value));
  const most = usual === undefined ? few : Math.max(usual + 1, few - 3);
  const first = usual ?? 0;
  const ends = beside ? [beside.value, beside.low, beside.high].filter(Number.isFinite) : [];
  const away = Math.min(...ends.map((end) => Math.abs(fromSI(end, unit) - value)));
  for (let places = first; places <= MAX_PLACES; places += 1) {
    if (fitsDecimals(value, places)) return places;
    const moved = Math.abs(Number(roundedText(value, places)) - value);
    if (places >= most && moved <= APART * away) return places;
  }
  return MAX_PLACES;
};

/** Too large or too small to be written out. */
const isPower = (value: number, unit: Unit): boolean =>
  !Number.isFinite(value) ||
  (value !== 0 &&
    (magnitude(value) >= LARGE || (usualPlaces(unit) === undefined && magnitude(value) < -MAX_PLACES + 3)));

export type LimitOptions = Pick<FormatOptions, 'comma'> & { beside?: Beside | undefined };

/** A limit as it is printed: with its unit, and rounded no further than what is printed beside it allows. */
export const formatLimit = (si: number, unit: Unit, options: LimitOptions = {}): string =>
  limitNumber(si, unit, options) + behind(unit);

/** The same without the unit. */
export const limitNumber = (si: number, unit: Unit, { comma, beside }: LimitOptions = {}): string =>
  formatNumber(
    si,
    unit,
    isPower(fromSI(si, unit), unit) ? { comma } : { comma, decimals: limitPlaces(si, unit, beside) },
  );

/** The ends as they are printed, on the scale of the unit, and whether they say of the limits what the verdict says. */
const isTrue = (
  figure: ShownFigure,
  ends: { below: number; above: number },
  unit: Unit,
  places: number,
  against: readonly Against[],
): boolean => {
  const step = differenceUnit(unit);
  const printed = Number(roundedText(fromSI(figure.value, unit), places));
  const hair = 10 ** -places * 1e-6;
  const low = printed + fromSI(outward(ends.below, step, places, -1, figure.value), step);
  const high = printed + fromSI(outward(ends.above, step, places, 1, figure.value), step);
  const { value } = figure;
  const beside = { value, low: value + ends.below, high: value + ends.above };
  const told = (si: number | undefined): number | undefined =>
    si === undefined ? undefined : Number(roundedText(fromSI(si, unit), limitPlaces(si, unit, beside)));
  return against.every(({ lower, upper, grade }) => {
    const from = told(lower) ?? Number.NEGATIVE_INFINITY;
    const to = told(upper) ?? Number.POSITIVE_INFINITY;
    // What touches a limit is inside: a hair of arithmetic must not tell otherwise.
    const isInside = low >= from - hair && high <= to + hair;
    const isOutside = high < from - hair || low > to + hair;
    return grade === 'out' ? isOutside : grade === 'open' ? !isInside && !isOutside : isInside;
  });
};

/** Places of a figure with its spread: more than the spread asks for where the verdict would not be borne out. */
const placesFor = (
  figure: ShownFigure,
  ends: { below: number; above: number },
  spread: number | undefined,
  unit: Unit,
  { band }: FigureOptions,
): number | undefined => {
  const places = spread === undefined ? undefined : digitsFor(spread, unit);
  const against = band?.against ?? [];
  if (against.length === 0 || !Number.isFinite(fromSI(figure.value, unit))) return places;
  const first = places ?? digitsFor(undefined, unit, figure.value);
  if (first > MAX_PLACES) return places;
  for (let more = first; more <= first + MORE_PLACES; more += 1)
    if (isTrue(figure, ends, unit, more, against)) return more === first ? places : more;
  return first + MORE_PLACES;
};

/**
 * A figure with its spread, in the places the spread supports: the worst case, the expanded uncertainty (k = 2) about its
 * centre, or the band given. Ends that differ once rounded are shown as upper and lower. An end is rounded outward, so
 * that no spread reads smaller than it is; and there are as many places as it takes to bear out the verdict on it.
 */
export const formatFigure = (figure: ShownFigure, unit: Unit, options: FigureOptions = {}): FigureText => {
  const { below, above } = spreadOf(figure, options);
  const known = Number.isFinite(below) && Number.isFinite(above);
  const half = known ? (above - below) / 2 : 0;
  const noise = Math.abs(figure.value) * 1e-13;
  const spread = half > noise ? half : undefined;
  const decimals =
    options.decimals ?? (known ? placesFor(figure, { below, above }, spread, unit, options) : undefined);
  const { comma } = options;
  const value = formatNumber(figure.value, unit, {
    comma,
    spread,
    decimals:
      decimals !== undefined &&
      decimals > MAX_PLACES &&
      spread !== undefined &&
      digitsFor(spread, unit) > MAX_PLACES
        ? undefined
        : decimals,
  });
  let text = '';
  if (spread !== undefined) {
    const step = differenceUnit(unit);
    const places = decimals as number;
    const isFine = digitsFor(spread, unit) > MAX_PLACES;
    const end = (si: number, way: 1 | -1): string =>
      formatNumber(outward(si, step, places, way, figure.value), step, {
        spread,
        comma,
        decimals: isFine ? undefined : places,
        sign: true,
      });
    const upper = end(above, 1);
    const lower = end(below, -1);
    if (upper.replace('+', '') === lower.replace('-', '')) text = `± ${upper.replace('+', '')}`;
    else text = `${signed(upper, '+')} ${signed(lower, '-')}`;
  }
  return {
    value,
    spread: text,
    unit: unit.label,
    text: value + behind(unit) + (text && ` ${text}${behind(unit)}`),
  };
};
