import { sameDimension } from '../dimension.ts';
import { fitsDecimals, magnitude, roundedText, trimmedText } from '../rounding.ts';

import { findUnit, fromSI, parseUnit, toSI, type Unit, unitsOfDimension } from '../units/units.ts';

/** The figure a result reports, as far as showing it needs; all SI. */
export interface ShownFigure {
  value: number;
  low: number;
  high: number;
  centre: number;
  u: number;
  dof?: number;
}

export interface FormatOptions {
  /** Half-width of the spread, SI: decides the places. */
  spread?: number;
  /** Places, whatever the spread. */
  decimals?: number;
  /** Put a plus before a positive figure. */
  sign?: boolean;
  /** Decimal comma. */
  comma?: boolean;
}

/** Places a shop reads a length to: tenths of a thousandth of an inch, micrometres. One fewer or one more by the spread. */
const USUAL_PLACES: Readonly<Record<string, number>> = { in: 4, thou: 1, ft: 5, mm: 3, um: 0, cm: 4, m: 6 };
export const usualPlaces = (unit: Unit): number | undefined =>
  Object.hasOwn(USUAL_PLACES, unit.symbol) ? USUAL_PLACES[unit.symbol] : undefined;

const FREE_DIGITS = 5;
/** More than so many are written as powers of ten. */
export const MAX_PLACES = 7;
/** Power of ten from which on numbers are written as such. */
export const LARGE = 10;

const unitWidth = (si: number, unit: Unit): number => Math.abs(si) / unit.factor;

/**
 * Power of ten of the leading digit once rounded to two digits, so that 0.0996 counts as 0.10. Every figure of the sheet
 * asks for it: the logarithm tells, but where rounding or its own last bits could decide.
 */
const spreadMagnitude = (x: number): number => {
  const power = Math.floor(Math.log10(x));
  const lead = x / 10 ** power;
  return lead > 1.01 && lead < 9.9 ? power : magnitude(Number(x.toPrecision(2)));
};

/**
 * Places a spread supports (its half-width, SI): two significant figures of it at most. A length keeps near the places
 * its unit is read to: in inches 4, 3 where the spread is coarse, 5 where it is finer than a tenth; in millimetres
 * 3, 2 and 4; where it is an inch or a centimetre wide, only the two figures. Negative: whole tens, hundreds. Without
 * a spread `value` (SI) decides: five significant figures.
 */
export const digitsFor = (spread: number | undefined, unit: Unit, value = 0): number => {
  const usual = usualPlaces(unit);
  const width = spread === undefined ? 0 : unitWidth(spread, unit);
  if (!Number.isFinite(width) || width === 0) {
    const shown = fromSI(value, unit);
    if (usual !== undefined)
      return Number.isFinite(shown) && !fitsDecimals(shown, usual) && fitsDecimals(shown, usual + 1)
        ? usual + 1
        : usual;
    return Number.isFinite(shown) ? Math.max(0, FREE_DIGITS - 1 - magnitude(shown)) : 0;
  }
  const two = 1 - spreadMagnitude(width);
  if (usual === undefined) return two;
  const one = two - 1;
  if (one > usual) return usual + 1;
  if (two < usual - 2) return two;
  return Math.min(usual, Math.max(usual - 1, two));
};

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const superscript = (n: number): string =>
  [...String(n)].map((c) => (c === '-' ? '⁻' : (SUPERSCRIPTS[Number(c)] ?? c))).join('');

/** `1.170×10⁻⁵`. `decimals` counts places of the whole number, as everywhere. */
const scientific = (value: number, decimals: number): { mantissa: string; power: number } => {
  const [digits = '0'] = value.toExponential().split('e');
  const power = magnitude(value);
  const mantissa = roundedText(Number(digits), Math.min(Math.max(decimals + power, 0), LARGE));
  // 9.9996 rounds to 10.00: one power up.
  if (!/^-?10/.test(mantissa)) return { mantissa, power };
  return {
    mantissa: mantissa.replace(
      /10(\.?)(\d*)/,
      (_, point: string, rest: string) => `1${point}${rest && `0${rest}`.slice(0, rest.length)}`,
    ),
    power: power + 1,
  };
};

/** Beyond so many units of the last place a double has too few digits left to tell how near a half it is. */
const TELLING = 1e9;
const NEAR_HALF = 1e-10;

/**
 * To `places`, where the figure is nowhere near a half, so that the noise of a division cannot decide: the same text as
 * by exact arithmetic at a fraction of its cost. Undefined where exact arithmetic has to tell.
 */
const plainlyRounded = (si: number, unit: Unit, places: number): string | undefined => {
  if (unit.offset || places < 0 || places > MAX_PLACES) return undefined;
  const lasts = unitWidth(si, unit) * 10 ** places;
  if (!(lasts < TELLING)) return undefined;
  const below = Math.floor(lasts);
  const rest = lasts - below;
  if (Math.abs(rest - 0.5) <= NEAR_HALF * (1 + lasts)) return undefined;
  const whole = rest < 0.5 ? below : below + 1;
  const sign = si < 0 && whole > 0 ? '-' : '';
  if (places === 0) return sign + whole;
  const padded = String(whole).padStart(places + 1, '0');
  return `${sign}${padded.slice(0, -places)}.${padded.slice(-places)}`;
};

const roundedIn = (si: number, unit: Unit, options: FormatOptions): string => {
  const { spread } = options;
  const places = options.decimals ?? digitsFor(spread, unit, si);
  // Five significant figures are a ceiling, not a statement: 20 °C with no spread is not 20.000 °C.
  const free = options.decimals === undefined && !spread && usualPlaces(unit) === undefined;
  const plain = free ? undefined : plainlyRounded(si, unit, places);
  if (plain !== undefined) return plain;
  const value = fromSI(si, unit);
  if (Number.isNaN(value)) return '—';
  if (!Number.isFinite(value)) return value > 0 ? '∞' : '-∞';
  if (value !== 0 && (magnitude(value) >= LARGE || (options.decimals === undefined && places > MAX_PLACES))) {
    const { mantissa, power } = scientific(value, places);
    return `${spread ? mantissa : trimmedText(mantissa, 0)}×10${superscript(power)}`;
  }
  const text = roundedText(value, options.decimals === undefined ? Math.min(places, MAX_PLACES) : places);
  return free ? trimmedText(text, 0) : text;
};

/** A number of `unit`s, without the unit's label: `2.2515`, `-0.0003`, `1.17×10⁻⁵`; `—` where there is none. */
export const formatNumber = (si: number, unit: Unit, options: FormatOptions = {}): string => {
  const text = roundedIn(si, unit, options);
  const told = options.sign && /[1-9]/.test(text) && !text.startsWith('-') ? `+${text}` : text;
  return options.comma ? told.replace('.', ',') : told;
};

/** A difference on the unit's scale: 20 °C ± 2 K is ± 3.6 °F. */
export const differenceUnit = (unit: Unit): Unit =>
  unit.point ? { ...unit, point: false, offset: 0 } : unit;

/** The places that the spread of a figure supports, for another number in its unit; its own where there is none. */
export const placesOf = (figure: ShownFigure | undefined): Pick<FormatOptions, 'spread'> => {
  const spread = figure && (figure.high - figure.low) / 2;
  return spread && Number.isFinite(spread) ? { spread } : {};
};

/** Degrees, minutes and seconds stand against their number; every other unit behind a space. */
export const behind = (unit: Unit): string =>
  unit.label === '' ? '' : ['°', '′', '″'].includes(unit.label) ? unit.label : `\u00a0${unit.label}`;

/** `2.2515 in`, with a space that does not break. */
export const formatQuantity = (si: number, unit: Unit, options: FormatOptions = {}): string =>
  formatNumber(si, unit, options) + behind(unit);

const shortestNumber = (si: number, unit: Unit): string | undefined => {
  const value = fromSI(si, unit);
  for (let digits = 1; digits <= 17; digits += 1) {
    const candidate = Number(value.toPrecision(digits));
    if (toSI(candidate, unit) === si) return String(candidate);
  }
  const ulp = 2 ** (Math.floor(Math.log2(Math.abs(value))) - 52);
  for (const candidate of [value + ulp, value - ulp])
    if (toSI(candidate, unit) === si) return String(candidate);
  return undefined;
};

const ANGLE = /^(deg|arcmin|arcsec|rad|mrad)$/;

/**
 * The shortest entry that reads back as the same double: `2.2515 in`. Not every double can be reached in every unit:
 * where this one cannot, the text takes another unit of the same dimension, in the last resort SI. Empty when `si` is
 * not finite. `point`: the cell holds a point on a temperature scale.
 */
export const writeEntry = (si: number, unitSymbol: string, point?: boolean): string => {
  if (!Number.isFinite(si)) return '';
  const unit = unitSymbol === '' ? undefined : parseUnit(unitSymbol, point === undefined ? {} : { point });
  if (unit === undefined || !('symbol' in unit)) return String(si);
  // A share is no angle, though neither has a dimension.
  const others = unitsOfDimension(unit.dimension, unit.point).filter(
    (u) => sameDimension(u.dimension, unit.dimension) && ANGLE.test(u.symbol) === ANGLE.test(unit.symbol),
  );
  const inches = /^(in|thou|tenth_in|uin|ft)$/.test(unit.symbol);
  const familiar = inches ? ['thou', 'tenth_in', 'uin', 'ft'].map((s) => findUnit(s) as Unit) : [];
  for (const u of [unit, ...familiar, ...others]) {
    const text = shortestNumber(si, u);
    if (text !== undefined) return `${text} ${u.symbol}`;
  }
  return `${si}`;
};
