import { isNone, sameDimension } from '../../../shared/dimension.ts';
import type { Remedy } from '../../../shared/problem.ts';
import { bareUnit, NUMBER_UNIT, type QuantityKind } from '../../../shared/quantities/quantities.ts';
import type { SheetUnits } from '../../../shared/sheet/format.ts';
import type { Unit } from '../../../shared/units/unit.ts';
import { findUnit, isUnit, parseUnit } from '../../../shared/units/units.ts';
import { isAngular } from '../syntax/sort.ts';
import type { Literal, Span } from '../syntax/syntax.ts';
import { article, describeDimension, short } from '../syntax/wording.ts';
import { type Amount, toLiteral } from './amount.ts';
import { complain, type Reading, remedy, replaced, wanted } from './reading.ts';

const other = (length: SheetUnits['length']): SheetUnits['length'] => (length === 'in' ? 'mm' : 'in');

/** A unit put in front of a class, `50H7`, needs a blank on either side. */
const spaced = (r: Reading, at: number, unit: string): string =>
  ` ${unit}${/^[A-Za-z]/.test(r.text.slice(at)) ? ' ' : ''}`;

export const withUnit = (r: Reading, at: number, unit: string): Remedy =>
  remedy(replaced(r, { from: at, to: at }, spaced(r, at, unit)));

const askQuantity = (r: Reading, span: Span, at: number): undefined => {
  const { length } = r.context.units;
  const names = { in: 'inches', mm: 'millimetres' };
  return complain(
    r,
    'ask',
    `${short(r.text.slice(span.from, span.to))} has no unit: ${names[length]}, ${names[other(length)]}, or a plain number?`,
    span,
    [
      withUnit(r, at, length),
      withUnit(r, at, other(length)),
      { label: 'plain number', entry: r.text, quantity: 'number' },
    ],
  );
};

const askUnit = (r: Reading, kind: QuantityKind, span: Span, at: number): undefined => {
  const { length } = r.context.units;
  const units = [
    ...new Set([...kind.units[length].slice(0, 3), ...kind.units[other(length)].slice(0, 2)]),
    ...(kind.units[length].includes('') ? [`${length}/${length}`] : []),
  ].filter((unit) => unit !== '');
  return complain(
    r,
    'ask',
    `${short(r.text.slice(span.from, span.to))} has no unit, and the trade has no one unit for ${article(kind.label)}: which is it?`,
    span,
    units.map((unit) => withUnit(r, at, unit)),
  );
};

const isFraction = ({ digits, ratio }: Amount): boolean => digits === undefined && ratio.d !== 1n;

/** 27/64 in a sheet of millimetres is a size in inches more often than not. */
const askFraction = (r: Reading, span: Span, at: number): undefined =>
  complain(
    r,
    'ask',
    `${short(r.text.slice(span.from, span.to))} has no unit: is the fraction in inches or in millimetres?`,
    span,
    [withUnit(r, at, 'in'), withUnit(r, at, 'mm')],
  );

/** Small units never stand for the size itself: 2.25 ± 2 thou is inches and thou. */
const SMALL: Readonly<Record<string, 'in' | 'mm'>> = {
  thou: 'in',
  tenth_in: 'in',
  uin: 'in',
  um: 'mm',
  tenth_mm: 'mm',
  nm: 'mm',
};

/** Unit of a bare size from the unit of its spread, where that can only be read in one way. */
const fromSpread = (r: Reading, spread: Unit, span: Span, at: number): Unit | undefined => {
  const sheet = r.context.units.length;
  const system = SMALL[spread.symbol];
  if (system === undefined || r.kind?.name !== 'length') return spread;
  if (system === sheet) return insert(r, sheet, at);
  return complain(
    r,
    'ask',
    `${short(r.text.slice(span.from, span.to))} has no unit: is it in ${system} or in ${sheet}?`,
    span,
    [withUnit(r, at, system), withUnit(r, at, sheet)],
  );
};

/** Figures no smaller than these are sizes of the small unit as well as of the sheet's: 4 thou, and 4 in. */
const LEAST = { in: { n: 1n, d: 10n }, mm: { n: 1n, d: 1n } } as const;

/** 4 as a limit of what is shown in thou: thou, or inches? .004 is inches, as every shop writes it. */
const isShownSmall = (r: Reading, bare: readonly Amount[]): boolean => {
  const { display, units } = r.context;
  const least = LEAST[units.length];
  return (
    r.kind?.name === 'length' &&
    display !== undefined &&
    SMALL[display] === units.length &&
    bare.some(({ ratio: { n, d } }) => (n < 0n ? -n : n) * least.d >= least.n * d)
  );
};

const askShown = (r: Reading, span: Span, at: number): undefined => {
  const { display = '', units } = r.context;
  return complain(
    r,
    'ask',
    `${short(r.text.slice(span.from, span.to))} has no unit, and this is shown in ${display}: is it in ${display} or in ${units.length}?`,
    span,
    [withUnit(r, at, display), withUnit(r, at, units.length)],
  );
};

/** No part on a bench is so long, in the units of the sheet: a decimal point was left out, or it is in small units. */
const LONGEST = { in: 500n, mm: 10_000n } as const;
const SMALLER = { in: 'thou', mm: 'um' } as const;

const isTooLong = (r: Reading, bare: readonly Amount[]): boolean =>
  r.kind?.name === 'length' &&
  bare.some(({ ratio: { n, d } }) => (n < 0n ? -n : n) >= LONGEST[r.context.units.length] * d);

const askLong = (r: Reading, span: Span, at: number): undefined => {
  const { length } = r.context.units;
  return complain(
    r,
    'ask',
    `${short(r.text.slice(span.from, span.to))} has no unit: is its decimal point missing, or is it in ${SMALLER[length]}, or indeed in ${length}?`,
    span,
    [withUnit(r, at, SMALLER[length]), withUnit(r, at, length)],
  );
};

const insert = (r: Reading, symbol: string, at: number): Unit | undefined => {
  if (symbol === '') return NUMBER_UNIT;
  const unit = parseUnit(symbol, wanted(r));
  if (!isUnit(unit)) return undefined;
  r.edits.push({ from: at, to: at, insert: spaced(r, at, symbol) });
  return unit;
};

/**
 * Units of a group of amounts that belong together. A bare one takes the unit the others have, a trailing one first;
 * else that of the spread; else the sheet's for what the cell holds, which is then written into the stored text once,
 * behind the last of them.
 */
export const settle = (r: Reading, amounts: readonly Amount[], spread?: Unit): Unit[] | undefined => {
  const last = amounts.at(-1);
  if (!last) return undefined;
  const bare = amounts.filter((amount) => !amount.unit);
  const present = new Map(amounts.flatMap(({ unit }) => (unit ? [[unit.symbol, unit] as const] : [])));
  let common: Unit | undefined;
  const span = { from: (bare[0] ?? last).from, to: (bare.at(-1) ?? last).to };
  if (bare.length === 0) common = last.unit;
  else if (last.unit) common = last.unit;
  else if (present.size === 1) [common] = present.values();
  else if (present.size > 1) {
    complain(
      r,
      'ask',
      `${short(r.text.slice(last.from, last.to))} has no unit, and the others have different ones: which is it?`,
      last,
      [...present.keys()].map((symbol) => withUnit(r, last.to, symbol)),
    );
  } else if (isShownSmall(r, bare)) askShown(r, span, last.to);
  else if (!spread && isTooLong(r, bare)) askLong(r, span, last.to);
  else if (spread) common = fromSpread(r, spread, span, last.to);
  else if (!r.kind) askQuantity(r, span, last.to);
  else if (r.kind.name === 'length' && r.context.units.length === 'mm' && bare.some(isFraction))
    askFraction(r, span, last.to);
  else {
    const symbol = bareUnit(r.kind, r.context.units);
    common = symbol === undefined ? askUnit(r, r.kind, span, last.to) : insert(r, symbol, last.to);
  }
  const found = common;
  return found && amounts.map((amount) => amount.unit ?? found);
};

const ANGLES = /^(deg|arcmin|arcsec|rad|mrad)$/;

const describeLiteral = (literal: Literal): string =>
  ANGLES.test(literal.unit ?? '') ? 'an angle' : describeDimension(literal.dimension, literal.point);

/** 105 rad/s is 1000 turns in a minute and not 6300; 4 deg is no taper: included, or to the centreline? */
const refusesAngle = (r: Reading, literal: Literal, kind: QuantityKind): boolean => {
  if (!isAngular(literal.unit)) return false;
  const span = { from: literal.from, to: literal.to };
  const entry = `= ${literal.text} / (2 * PI())`;
  if (kind.name === 'rotational speed')
    complain(
      r,
      'dimension',
      `${article(kind.label)} is counted in turns here, ${short(literal.text)} is an angle in a time.`,
      span,
      r.text.trim() === literal.text ? [{ label: `so many turns: ${entry}`, entry }] : undefined,
    );
  else if (kind.name === 'number')
    complain(
      r,
      'dimension',
      `${article(kind.label)} is wanted here, ${short(literal.text)} is an angle.`,
      span,
    );
  else return false;
  return true;
};

/** 70 deg where a temperature is wanted; 15', minutes and no feet; 2.250 min, the least size and no time. */
const remediesOf = (r: Reading, literal: Literal, unitSpan: Span | undefined): Remedy[] | undefined => {
  if (!unitSpan) return undefined;
  const put = (insert: string): Remedy => remedy(replaced(r, unitSpan, insert).trimEnd());
  if (r.kind?.name.startsWith('temperature') && literal.unit === 'deg')
    return r.kind.point ? [put('degF'), put('degC')] : [put('degF_diff'), put('K')];
  const mark = r.text.slice(unitSpan.from, unitSpan.to);
  if (r.kind?.name === 'angle' && /^['"′″’”]$/.test(mark)) {
    const entry = `0 deg ${/['′’]/.test(mark) ? '' : "0' "}${r.text.trim()}`;
    return [{ label: entry, entry }];
  }
  return r.kind?.name === 'length' && r.text.slice(unitSpan.from, unitSpan.to) === 'min'
    ? [put('')]
    : undefined;
};

/** The cell holds one kind of quantity; a literal of another is refused with both named. */
export const fitsKind = (r: Reading, literal: Literal, unitSpan?: Span): boolean => {
  const { kind } = r;
  if (!kind) return true;
  const point = kind.point ?? false;
  const span = { from: literal.from, to: literal.to };
  if (!sameDimension(kind.dimension, literal.dimension)) {
    complain(
      r,
      'dimension',
      `${article(kind.label)} is wanted here, ${short(literal.text)} is ${describeLiteral(literal)}.`,
      span,
      remediesOf(r, literal, unitSpan),
    );
    return false;
  }
  if (refusesAngle(r, literal, kind)) return false;
  if (isNone(kind.dimension) || literal.point === point) return true;
  const swapped = point ? literal.unit?.replace(/_diff$/, '') : `${literal.unit}_diff`;
  const unit = swapped === undefined ? undefined : findUnit(swapped);
  const entry = unit && unitSpan ? replaced(r, unitSpan, unit.symbol) : undefined;
  complain(
    r,
    'dimension',
    point
      ? `a temperature is wanted here, ${literal.text} is a temperature difference${entry ? `: write ${entry.trim()} for a temperature` : ''}.`
      : `a temperature difference is wanted here, ${literal.text} is a point on the scale${entry ? `: write ${entry.trim()} for a rise or fall of that many degrees` : ''}.`,
    span,
    entry && unit ? [{ label: point ? entry.trim() : `a rise or fall: ${entry.trim()}`, entry }] : undefined,
  );
  return false;
};

/** Settles, converts and checks a group of amounts that belong together. */
export const settleLiterals = (
  r: Reading,
  amounts: readonly Amount[],
  spread?: Unit,
): { literals: Literal[]; units: Unit[] } | undefined => {
  const units = settle(r, amounts, spread);
  if (!units) return undefined;
  const literals = amounts.map((amount, i) => toLiteral(r, amount, units[i] as Unit));
  const whole = literals.filter((literal) => literal !== undefined);
  if (whole.length < literals.length) return undefined;
  const fit = whole.every((literal, i) => fitsKind(r, literal, amounts[i]?.unitSpan));
  return fit ? { literals: whole, units } : undefined;
};
