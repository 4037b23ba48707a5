/**
 * Numbers and units: tokens that need to look ahead. They know the unit symbols and nothing else of the sheet; what
 * the grammar allows at the place decides between readings.
 */
import { ExternalTokenizer, type InputStream, type Stack } from '@lezer/lr';
import { unitSymbols } from '../../../shared/units/units.ts';
import {
  isBlank,
  isDigit,
  isFootMark,
  isInchMark,
  isLatin,
  isUnitLetter,
  isUnitPart,
  isUnitStart,
  run,
  slice,
} from './characters.ts';
import {
  AskNumber,
  BareFraction,
  BareMixed,
  Dialect_comma,
  Fit,
  Fraction,
  Minute,
  Mixed,
  Number as NumberTerm,
  OtherPoint,
  Second,
  Unit,
} from './entry.grammar.terms';

const POINT = 46;
const COMMA = 44;
const STROKE = 47;
const HYPHEN = 45;

/** End of digits "/" digits from `at`, or -1. */
const fractionEnd = (input: InputStream, at: number): number => {
  const top = run(input, at, isDigit);
  if (top === at || input.peek(top) !== STROKE) return -1;
  const end = run(input, top + 1, isDigit);
  return end === top + 1 || (input.peek(end) === POINT && isDigit(input.peek(end + 1))) ? -1 : end;
};

const hasUnit = (input: InputStream, end: number): boolean =>
  isUnitStart(input.peek(run(input, end, isBlank)));

/** `2-1/4` as a shop writes two and a quarter: only where no arithmetic can stand, and only a proper fraction. */
const hyphenMixedEnd = (input: InputStream, whole: number): number => {
  if (whole === 0 || input.peek(whole) !== HYPHEN) return -1;
  const end = fractionEnd(input, whole + 1);
  if (end < 0) return -1;
  const [top, bottom] = slice(input, whole + 1, end).split('/');
  return Number(top) < Number(bottom) ? end : -1;
};

const readNumber = (input: InputStream, stack: Stack): void => {
  const first = input.next;
  if (!isDigit(first) && !((first === POINT || first === COMMA) && isDigit(input.peek(1)))) return;
  const whole = run(input, 0, isDigit);
  // 27/64 in  and  2 1/4 in: one number when a unit follows
  const accept = (end: number, withUnit: number, bare: number): boolean => {
    if (end < 0) return false;
    const term = hasUnit(input, end) ? withUnit : bare;
    if (!stack.canShift(term)) return false;
    input.acceptToken(term, end);
    return true;
  };
  if (accept(fractionEnd(input, 0), Fraction, BareFraction)) return;
  const gap = run(input, whole, isBlank);
  if (whole > 0 && gap > whole && accept(fractionEnd(input, gap), Mixed, BareMixed)) return;
  if (stack.canShift(BareMixed) && accept(hyphenMixedEnd(input, whole), Mixed, BareMixed)) return;

  const comma = stack.dialectEnabled(Dialect_comma);
  const own = comma ? COMMA : POINT;
  const other = comma ? POINT : COMMA;
  let at = whole;
  let term = NumberTerm;
  const mark = input.peek(at);
  if ((mark === own || mark === other) && isDigit(input.peek(at + 1))) {
    const stop = run(input, at + 1, isDigit);
    if (mark === other) {
      // The other decimal mark can only be misread where it could group thousands: 1,234 but not 2,25 or 0,005. In a
      // formula a comma also parts arguments, MAX(1,5): there it is always asked.
      const groups = whole >= 1 && whole <= 3 && first !== 48 && stop - at - 1 === 3;
      term = groups || !stack.canShift(BareMixed) ? AskNumber : OtherPoint;
    }
    at = stop;
  } else if (mark === own && whole > 0 && input.peek(at + 1) !== POINT) {
    at += 1; // 2. in
  }
  const e = input.peek(at);
  if (e === 69 || e === 101) {
    const signed = input.peek(at + 1) === 43 || input.peek(at + 1) === HYPHEN ? 2 : 1;
    const stop = run(input, at + signed, isDigit);
    if (stop > at + signed && !isUnitPart(input.peek(stop))) at = stop;
  }
  input.acceptToken(term, at);
};

const isSuperscript = (c: number): boolean =>
  c === 0xb2 || c === 0xb3 || c === 0xb9 || c === 0x2074 || c === 0x207b;

const isPowerDigit = (c: number): boolean => c >= 50 && c <= 52;

const powerEnd = (input: InputStream, at: number): number => {
  if (isSuperscript(input.peek(at))) return run(input, at, isSuperscript);
  return isPowerDigit(input.peek(at)) && !isDigit(input.peek(at + 1)) ? at + 1 : at;
};

/** End of one known unit word with its power from `at`, or -1. */
const knownEnd = (input: InputStream, at: number): number => {
  const end = run(input, at, isUnitPart);
  return end > at && unitSymbols.has(slice(input, at, end)) ? powerEnd(input, end) : -1;
};

const isJoint = (c: number): boolean => c === POINT || c === 0xb7 || c === 0x22c5 || c === 42;

/** End of `(m.K)` from its opening parenthesis, or -1. */
const groupEnd = (input: InputStream, open: number): number => {
  let at = knownEnd(input, open + 1);
  while (at > 0 && isJoint(input.peek(at))) at = knownEnd(input, at + 1);
  return at > 0 && input.peek(at) === 41 ? at + 1 : -1;
};

/** Goes on over `/s`, `.m`, `/(m.K)` and `-lb` for as long as known units follow; mm/d, d a cell, is a division. */
const compoundEnd = (input: InputStream, from: number, first: number): number => {
  let end = first;
  for (;;) {
    const mark = input.peek(end);
    let next = -1;
    if (mark === STROKE)
      next = input.peek(end + 1) === 40 ? groupEnd(input, end + 1) : knownEnd(input, end + 1);
    else if (isJoint(mark)) next = knownEnd(input, end + 1);
    else if (mark === HYPHEN) {
      const stop = run(input, end + 1, isUnitPart);
      if (unitSymbols.has(slice(input, from, stop))) next = stop;
    }
    if (next < 0) return end;
    end = next;
  }
};

/** ISO 286 letters and grade from the present place, or -1. */
const fitEnd = (input: InputStream): number => {
  const letters = run(input, 0, isLatin);
  const grade = run(input, letters, isDigit);
  const fits = letters > 0 && letters <= 2 && grade > letters && grade - letters <= 2;
  return fits && !isUnitPart(input.peek(grade)) ? grade : -1;
};

const readUnit = (input: InputStream, stack: Stack): void => {
  const first = input.next;
  if (isFootMark(first) || isInchMark(first)) {
    const arc = isFootMark(first) ? Minute : Second;
    if (stack.canShift(arc) || !stack.canShift(Unit)) return;
    input.acceptToken(Unit, first === 39 && input.peek(1) === 39 ? 2 : 1);
    return;
  }
  // 11.7e-6 1/K: a reciprocal unit may open with 1/, only before a known unit
  const from = first === 49 && input.peek(1) === STROKE ? 2 : 0;
  if (!isUnitLetter(input.peek(from))) return;
  if (from > 0 && knownEnd(input, from) < 0) return;
  const end = from === 0 ? fitEnd(input) : -1;
  if (end > 0 && stack.canShift(Fit)) {
    // 4 m2 is an area, 12 m6 and 12 mm m6 are fits
    const area = stack.canShift(Unit) && knownEnd(input, 0) === end;
    if (!area) {
      input.acceptToken(Fit, end);
      return;
    }
  }
  if (!stack.canShift(Unit)) return;
  input.acceptToken(Unit, compoundEnd(input, 0, powerEnd(input, run(input, from, isUnitPart))));
};

export const numbers = new ExternalTokenizer(readNumber, { contextual: true });
export const units = new ExternalTokenizer(readUnit, { contextual: true });
