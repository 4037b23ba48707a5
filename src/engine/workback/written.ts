import { usualPlaces } from '../../../shared/quantities/figures.ts';
import { displayUnit } from '../../../shared/quantities/quantities.ts';
import { magnitude, roundedText, trimmedText } from '../../../shared/rounding.ts';
import { fromSI, isUnit, parseUnit, toSI, type Unit } from '../../../shared/units/units.ts';
import { sizeOf } from '../../language/syntax/size-of.ts';
import type { Computed } from '../computed.ts';
import { type Movable, reach } from './inputs.ts';

/** A number as it can be written, and what it then is, SI. */
export interface Written {
  text: string;
  value: number;
}

/** Figures in which a number is written out in full. */
const FULL = 15;

/** The unit an input is written in: that of its entry, else the one it is shown in. */
export function unitOf(book: Computed, { cell, entry, quantity, display, typedIn }: Movable): Unit {
  // A line whose author names no quantity holds what its entry turned out to be.
  const found = quantity ? undefined : book.cells.get(cell)?.outputs.find(({ name }) => name === 'value');
  const typed = quantity || typedIn === undefined ? undefined : parseUnit(typedIn);
  const shown =
    typed && isUnit(typed)
      ? typed
      : displayUnit(quantity ?? found?.quantity, book.settings.units, display ?? found?.display);
  // Of a fraction or a mixed size (`2 1/4 in`) the unit stays; of minutes behind degrees it is the first that counts.
  const symbol = entry.kind === 'range' ? entry.high.unit : sizeOf(entry)?.unit;
  if (!symbol || entry.kind === 'designation') return shown;
  const own = parseUnit(symbol, { point: shown.point === true });
  return isUnit(own) && own.symbol !== '' ? own : shown;
}

/** A number in full, without a power of ten. */
const decimal = (x: number): string => trimmedText(roundedText(x, Math.max(0, FULL - 1 - magnitude(x))), 0);

/** A value in full in a unit. */
export const writtenIn = (si: number, unit: Unit): string => amountOf(decimal(fromSI(si, unit)), unit);

/** The same, as the number alone. */
export const inFull = (si: number, unit: Unit): Written => ({ text: decimal(fromSI(si, unit)), value: si });

const amountOf = (number: string, unit: Unit): string =>
  unit.symbol === '' ? number : `${number} ${unit.symbol}`;

/**
 * Ways to write a value, from few places to all there are; each a number in the unit.
 * @param aside a place finer to begin with, and at each place the numbers on either side: one of them keeps a limit
 */
export function waysToWrite(value: number, unit: Unit, aside: boolean): Written[] {
  const there = fromSI(value, unit);
  if (!Number.isFinite(there)) return [];
  const figures = magnitude(there || 1);
  const least = (usualPlaces(unit) ?? Math.max(0, 3 - figures)) + (aside ? 1 : 0);
  const most = Math.min(20, Math.max(least, FULL - 1 - figures));
  const ways: Written[] = [];
  const add = (size: number, places: number): void => {
    const text = roundedText(size, places);
    const written = places > 0 ? text.replace(/0+$/, '').replace(/\.$/, '') : text;
    const shown = places === usualPlaces(unit) ? text : written;
    if (!ways.some((one) => one.text === shown)) ways.push({ text: shown, value: toSI(Number(text), unit) });
  };
  for (let places = least; places <= most; places++) {
    add(there, places);
    if (!aside) continue;
    add(there - 10 ** -places, places);
    add(there + 10 ** -places, places);
  }
  return ways;
}

/** The entry of an input with another number in it: what stands behind the number, such as a tolerance, is kept. */
export function entryWith(input: Movable, { text: number, value }: Written, unit: Unit): string {
  const { entry, text, field, quantity } = input;
  // A plain number in a line that names no quantity is read as one behind `=` alone.
  const isBare = entry.kind === 'formula' && unit.symbol === '' && !quantity;
  const amount = `${isBare ? '= ' : ''}${amountOf(number, unit)}`;
  if (field === 'tolerance') return toleranceWith(input, value, amount, unit);
  if (entry.kind === 'range') {
    const half = Math.abs(entry.high.value - entry.low.value) / 2;
    return `${writtenIn(value - half, unit)} .. ${writtenIn(value + half, unit)}`;
  }
  const literal = entry.kind === 'fit' || entry.kind === 'value' ? sizeOf(entry) : undefined;
  if (literal) {
    const behind = text.slice(literal.to);
    return `${text.slice(0, literal.from)}${amount}${/^\w/.test(behind) ? ' ' : ''}${behind}`;
  }
  const behind =
    entry.kind === 'formula' && entry.spread ? /\s*(?:±|\+\/-|\+-).*$/.exec(text)?.[0] : undefined;
  return amount + (behind ?? '');
}

/** A tolerance as much closer, even or uneven as it was; never wider than asked for. */
function toleranceWith({ free }: Movable, half: number, amount: string, unit: Unit): string {
  const body = free?.row.definition.body;
  const was = free && reach(free.row);
  if (body?.kind !== 'source' || was === undefined) return `± ${amount}`;
  const [low, high] = [Number(body.ends.low), Number(body.ends.high)];
  if (Math.abs(low + high) <= 1e-9 * was) return `± ${amount}`;
  const places = Math.min(20, (amount.split(' ')[0]?.split('.')[1]?.length ?? 0) + 1);
  const end = (si: number): string => {
    const size = Math.floor((Math.abs(si) * half * 10 ** places) / (was * unit.factor) + 1e-6) / 10 ** places;
    return `${si < 0 ? '-' : '+'}${roundedText(size, places)}`;
  };
  return `${end(high)} ${end(low)} ${unit.symbol}`;
}
