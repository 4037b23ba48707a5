import type { Band } from '../checks/band.ts';
import { magnitude } from '../rounding.ts';
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
import { type Beside, outward, toldLimit, toldTogether, toldValue } from './told-together.ts';

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

/** The band that is shown; the verdicts it must not contradict. */
type ShownBand = Pick<Band, 'low' | 'high'> & Partial<Pick<Band, 'against'>>;

export type FigureOptions = Pick<FormatOptions, 'comma'> & {
  /** In place of the worst case. */
  band?: ShownBand;
};

/** Too large or too small to be written out. */
const isPower = (value: number, unit: Unit): boolean =>
  !Number.isFinite(value) ||
  (value !== 0 &&
    (magnitude(value) >= LARGE || (usualPlaces(unit) === undefined && magnitude(value) < -MAX_PLACES + 3)));

/** A figure and its band, for the limits that are told beside it. */
export const besideOf = ({ value }: ShownFigure, { low, high, against }: ShownBand): Beside => ({
  value,
  low,
  high,
  against,
});

/** Half the width of a band; undefined where there is none. */
const halfOf = ({ value, low, high }: Beside): number | undefined => {
  const half = (high - low) / 2;
  return Number.isFinite(half) && half > Math.abs(value) * 1e-13 ? half : undefined;
};

export type LimitOptions = Pick<FormatOptions, 'comma'> & { beside?: Beside | undefined };

/** A limit as it is printed: with its unit, and rounded no further than what is printed beside it allows. */
export const formatLimit = (si: number, unit: Unit, options: LimitOptions = {}): string =>
  limitNumber(si, unit, options) + behind(unit);

/** The same without the unit. */
export const limitNumber = (si: number, unit: Unit, { comma, beside }: LimitOptions = {}): string => {
  if (isPower(fromSI(si, unit), unit)) return formatNumber(si, unit, { comma });
  const together = beside && toldTogether(beside, halfOf(beside), unit);
  const { value, places } = toldLimit(si, unit, beside, together);
  return formatNumber(toSI(value, unit), unit, { comma, decimals: places });
};

/**
 * A figure with its spread, in the places the spread supports: the worst case, or the
 * band given. Ends that differ once rounded are shown as upper and lower. An end is rounded outward, so
 * that no spread reads smaller than it is; and there are as many places as it takes to bear out the verdict on it.
 */
export const formatFigure = (
  figure: ShownFigure,
  unit: Unit,
  { comma, band = figure }: FigureOptions = {},
): FigureText => {
  const beside = besideOf(figure, band);
  const [below, above] = [beside.low - figure.value, beside.high - figure.value];
  const known = Number.isFinite(below) && Number.isFinite(above);
  const spread = halfOf(beside);
  const together = known ? toldTogether(beside, spread, unit) : undefined;
  // Without a spread as many figures as tell it, unless a limit asks for more.
  const isFree =
    spread === undefined &&
    !together?.isOther &&
    together?.places === digitsFor(undefined, unit, figure.value);
  const decimals = isFree ? undefined : together?.places;
  const isFine = spread !== undefined && digitsFor(spread, unit) > MAX_PLACES;
  const shown = together?.isOther
    ? toSI(toldValue(fromSI(figure.value, unit), together), unit)
    : figure.value;
  const value = formatNumber(shown, unit, {
    comma,
    spread,
    decimals: isFine && decimals !== undefined && decimals > MAX_PLACES ? undefined : decimals,
  });
  let text = '';
  if (spread !== undefined) {
    const step = differenceUnit(unit);
    const places = decimals as number;
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
