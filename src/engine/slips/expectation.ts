import { planOf } from '../rows/key.ts';
import type { Datum } from './datum.ts';
import type { Pair } from './pairs.ts';
import type { SlipSheet } from './sheet.ts';
import { wearsAs } from './words.ts';

/** Where a size ought to lie by what else the sheet knows, SI. */
export interface Expectation {
  by: 'group' | 'plan' | 'limits' | 'pair' | 'alike';
  low: number;
  high: number;
  /** How far beyond either end is nothing out of the ordinary. */
  slack: number;
  /** Number of lines it is known by. */
  many?: number;
  /** Way that wear leads, where it can explain a size beyond the end. */
  worn: 'low' | 'high' | 'either' | undefined;
  /** Beyond this no such part can be: a journal does not run in a smaller bore. */
  never?: { low?: number; high?: number };
  /** For people: `the plan, 2.2500 in`. */
  said: string;
}

/** How far outside an expectation a value lies; 0 within it. */
export const outside = (x: number, { low, high }: Expectation): number => Math.max(low - x, x - high, 0);

export const supports = (x: number, expected: Expectation): boolean => outside(x, expected) <= expected.slack;

/** What a part just made is cut to. */
export function fromPlan(datum: Datum, sheet: SlipSheet): Expectation | undefined {
  if (!datum.made) return undefined;
  const planned = planOf(datum.key);
  const plan = planned && sheet.figure(planned);
  if (!plan) return undefined;
  const half = (plan.high - plan.low) / 2;
  return {
    by: 'plan',
    low: plan.low,
    high: plan.high,
    slack: half > 0 ? Math.max(2 * half, sheet.step(datum)) : 4e-4 * Math.abs(plan.value),
    worn: undefined,
    said: `the plan, ${sheet.size(plan.value, datum)}`,
  };
}

/** The cell's own limits; of a part in service the wear limit too. */
export function fromLimits(datum: Datum, sheet: SlipSheet): Expectation | undefined {
  const { lower, upper, wear, metalOn } = sheet.limits(datum);
  const ends = [lower, upper, wear].filter((one) => one !== undefined);
  // One limit alone says on which side of it a size lies, and nothing of how large it is.
  if (ends.length < 2) return undefined;
  const low = Math.min(...ends);
  const high = Math.max(...ends);
  const surface = wearsAs(sheet.words(datum));
  const grows = metalOn === 'low' || (metalOn === undefined && surface === 'hole');
  const shrinks = metalOn === 'high' || (metalOn === undefined && surface === 'shaft');
  return {
    by: 'limits',
    low,
    high,
    slack: Math.max((high - low) / 2, 1e-4 * Math.abs(high)),
    worn: datum.made || !datum.read ? undefined : grows ? 'high' : shrinks ? 'low' : 'either',
    said: `the limits, ${sheet.size(low, datum)} to ${sheet.size(high, datum)}`,
  };
}

/** A limit that stands alone, SI. */
export interface OnlyLimit {
  lower?: number | undefined;
  upper?: number | undefined;
}

export function onlyLimit(datum: Datum, sheet: SlipSheet): OnlyLimit | undefined {
  const { lower, upper, wear } = sheet.limits(datum);
  return [lower, upper, wear].filter((one) => one !== undefined).length === 1 ? { lower, upper } : undefined;
}

/** True where a size lies on the wrong side of it. */
export const isBeyond = (value: number, { lower, upper }: OnlyLimit): boolean =>
  (lower !== undefined && value < lower) || (upper !== undefined && value > upper);

/** What a part that was cut to this size, give or take a step, came out at. */
export function fromMade(datum: Datum, made: Datum, sheet: SlipSheet): Expectation | undefined {
  const planned = planOf(made.key);
  const plan = planned && sheet.figure(planned);
  const [value, out] = [sheet.nominal(datum.key), sheet.nominal(made.key)];
  if (!plan || value === undefined || out === undefined) return undefined;
  const middle = value + out - plan.value;
  const half = (plan.high - plan.low) / 2;
  return {
    by: 'plan',
    low: middle - half,
    high: middle + half,
    slack: Math.max(2 * half, sheet.step(datum), 4e-4 * Math.abs(value)),
    worn: undefined,
    said: `what ${sheet.nameOf(made.key)} was cut to by it and came out at`,
  };
}

/** What the other part of a fit leaves room for. */
export function fromPair(datum: Datum, pair: Pair, sheet: SlipSheet): Expectation | undefined {
  const first = pair.from === datum.key;
  const other = sheet.nominal(first ? pair.taken : pair.from);
  if (other === undefined || other <= 0) return undefined;
  const fit = sheet.rangeOf(pair, other);
  if (!fit) return undefined;
  // As far as the other one is known.
  const beside = sheet.figure(first ? pair.taken : pair.from);
  const doubt = beside && Number.isFinite(beside.high - beside.low) ? (beside.high - beside.low) / 2 : 0;
  const [low, high] = first
    ? [other + fit.low - doubt, other + fit.high + doubt]
    : [other - fit.high - doubt, other - fit.low + doubt];
  const room = doubt + Math.max(sheet.step(datum), sheet.stepAt(first ? pair.taken : pair.from));
  return {
    by: 'pair',
    ...(pair.word === 'clearance' && datum.read
      ? { never: first ? { low: other - room } : { high: other + room } }
      : // Nothing is pressed that falls through by the interference of a tight fit.
        pair.word === 'interference' && fit.low > 0
        ? { never: first ? { low: low - fit.high } : { high: high + fit.high } }
        : {}),
    low,
    high,
    slack: Math.max((high - low) / 2, 3e-4 * other, sheet.step(datum)),
    worn: pair.word === 'interference' || !datum.read || datum.made ? undefined : first ? 'high' : 'low',
    said: `what ${sheet.nameOf(first ? pair.taken : pair.from)} and ${fit.said} leave for it`,
  };
}

/** Lines alike lie within this share of their size of each other: else they are a row of different sizes. */
const AGREEING = 0.02;

/** What the lines like it come to: pins 1, 2 and 3 of a set. */
export function fromAlike(datum: Datum, sheet: SlipSheet): Expectation | undefined {
  const others = sheet.alike(datum).sort((a, b) => a - b);
  if (others.length < 2) return undefined;
  const middle = median(others);
  // Of several one more may be out.
  const near =
    others.length < 4
      ? others
      : others.toSorted((a, b) => Math.abs(a - middle) - Math.abs(b - middle)).slice(0, -1);
  const [low, high] = [Math.min(...near), Math.max(...near)];
  if (low <= 0 || high - low > AGREEING * high) return undefined;
  return {
    by: 'alike',
    low,
    high,
    many: others.length,
    slack: high - low + sheet.step(datum),
    worn: undefined,
    said: `the lines like it, ${sheet.size(low, datum)} to ${sheet.size(high, datum)}`,
  };
}

/**
 * The other readings of a list: those at the same place along it, where there are enough of them, without the one that
 * is farthest off where there are many.
 */
export function othersOf(datum: Datum, index: number): number[] {
  const all = datum.literals.map((one, i) => ({ value: one.value, station: datum.stations[i], i }));
  const station = datum.stations[index];
  const beside = all.filter((one) => one.i !== index && one.station === station);
  const others = (beside.length > 1 ? beside : all.filter((one) => one.i !== index)).map((one) => one.value);
  if (others.length <= 3) return others;
  // One more that is out must not hide this one.
  const middle = median(others);
  const far = others.reduce((a, b) => (Math.abs(b - middle) > Math.abs(a - middle) ? b : a));
  return others.toSpliced(others.indexOf(far), 1);
}

/** What the other readings of a list say of one of them. */
export function fromGroup(datum: Datum, index: number, sheet: SlipSheet): Expectation | undefined {
  const others = othersOf(datum, index);
  if (others.length === 0) return undefined;
  const low = Math.min(...others);
  const high = Math.max(...others);
  return {
    by: 'group',
    low,
    high,
    slack: Math.max(high - low, 1e-5 * Math.abs(high), sheet.step(datum)),
    worn: undefined,
    said: others.length === 1 ? `the other reading, ${sheet.size(low, datum)}` : 'the other readings',
  };
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const upper = sorted[half] as number;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] as number) + upper) / 2;
}
