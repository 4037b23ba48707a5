import { roundedText } from '../../../shared/rounding.ts';
import { findUnit, fromSI } from '../../../shared/units/units.ts';
import type { GaugeSetting, Literal } from '../../language/syntax/syntax.ts';
import type { Datum } from './datum.ts';

const NUMBER = /[+-]?\s*(?:\d+(?:\s+|-)\d+\s*\/\s*\d+|\d+\s*\/\s*\d+|\d+[.,]\d*|[.,]?\d+)/;
const USUAL_DIGITS: Readonly<Record<string, number>> = { in: 4, thou: 1, mm: 3, um: 0 };

interface Piece {
  from: number;
  to: number;
  text: string;
}

const patched = (text: string, pieces: readonly Piece[]): string =>
  [...pieces]
    .sort((a, b) => b.from - a.from)
    .reduce((out, { from, to, text: put }) => out.slice(0, from) + put + out.slice(to), text);

/** Places a number was written to. */
export const digitsOf = (literal: Literal): number => literal.digits ?? USUAL_DIGITS[literal.unit ?? ''] ?? 4;

/** A value as a number of the unit of `literal`, in its places and as many more as it takes, three at most. */
function numberText(si: number, literal: Literal): string | undefined {
  const unit = findUnit(literal.unit ?? '');
  if (!unit) return undefined;
  const value = fromSI(si, unit);
  const digits = digitsOf(literal);
  for (let places = digits; places < digits + 3; places++) {
    const text = roundedText(value, places);
    if (Math.abs(Number(text) - value) <= Math.abs(value) * 1e-9) return text;
  }
  return roundedText(value, digits + 1);
}

/** The span of the number alone within the text, without its unit; undefined where it is not one number. */
export function numberSpan(datum: Datum, literal: Literal): { from: number; to: number } | undefined {
  const slice = datum.text.slice(literal.from, literal.to);
  const found = slice.match(NUMBER);
  if (!found || found.index === undefined) return undefined;
  const end = found.index + found[0].length;
  if (/\d/.test(slice.slice(end)) || /\d/.test(slice.slice(0, found.index))) return undefined;
  return { from: literal.from + found.index, to: literal.from + end };
}

/** The text with some of its readings replaced, by their number and SI value. */
export function withValues(datum: Datum, values: ReadonlyMap<number, number>): string | undefined {
  const pieces: Piece[] = [];
  for (const [index, value] of values) {
    const literal = datum.literals[index] as Literal;
    const span = numberSpan(datum, literal);
    const text = numberText(value, literal);
    if (!span || text === undefined) return undefined;
    pieces.push({ ...span, text });
  }
  return patched(datum.text, pieces);
}

/** The text with the size a gauge was set to replaced. */
export function withSetting(datum: Datum, set: GaugeSetting, size: number): string | undefined {
  const span = numberSpan(datum, set.size);
  const text = numberText(size, set.size);
  return span && text !== undefined ? patched(datum.text, [{ ...span, text }]) : undefined;
}

/** The text with the size of one division replaced. */
export function withDivision(datum: Datum, set: GaugeSetting, size: number): string | undefined {
  const span = numberSpan(datum, set.division);
  const text = numberText(size, set.division);
  return span && text !== undefined ? patched(datum.text, [{ ...span, text }]) : undefined;
}

/** The text with some of the counts of divisions replaced, as they are to be written. */
export function withDivisions(
  datum: Datum,
  set: GaugeSetting,
  counts: ReadonlyMap<number, string>,
): string | undefined {
  const found = divisionSpans(datum, set);
  if (!found) return undefined;
  const pieces = [...counts].map(([index, text]) => ({
    ...(found[index] as { from: number; to: number }),
    text,
  }));
  return patched(datum.text, pieces);
}

/** Where each count of divisions stands in the text. */
export function divisionSpans(
  datum: Datum,
  set: GaugeSetting,
): { from: number; to: number; text: string }[] | undefined {
  const between = datum.text.slice(set.size.to, set.division.from);
  const spans = [...between.matchAll(/[+-]?\s*\d+(?:\.\d+)?/g)].map((match) => ({
    from: set.size.to + match.index,
    to: set.size.to + match.index + match[0].length,
    text: match[0],
  }));
  const same =
    spans.length === set.divisions.length &&
    spans.every((span, i) => Number(span.text.replaceAll(' ', '')) === set.divisions[i]);
  return same ? spans : undefined;
}

/** A count of divisions with its sign always written. */
export const signedCount = (count: number): string => (count < 0 ? String(count) : `+${count}`);
