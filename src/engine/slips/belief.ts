import type { Datum } from './datum.ts';
import { type Expectation, othersOf } from './expectation.ts';

/**
 * How likely a size is by one thing the sheet knows. Tails are heavy throughout: what is really odd must not be taken for
 * impossible.
 */
export interface Belief {
  /** Logarithm of the density, SI. */
  at(x: number): number;
  /** The greatest it can be. */
  peak: number;
}

/**
 * What several beliefs come to: the sharpest as it is, and each of the others by how much less likely the size is than the
 * likeliest by it, so that they weigh as one density.
 */
export function together(beliefs: readonly Belief[]): (x: number) => number {
  const peaks = beliefs.map((one) => one.peak);
  const spare = peaks.reduce((a, b) => a + b, 0) - Math.max(...peaks);
  return (x) => beliefs.reduce((sum, belief) => sum + belief.at(x), 0) - spare;
}

/** Usual scatter of the readings of one surface as a share of its size (common practice, no source). */
const SCATTER = 1e-4;

/** And in steps of the last figure. */
const STEPS = 1.3;

/** What readings of such a size, written to such a step, usually scatter by, SI. */
export const usualScatter = (size: number, step: number): number =>
  Math.max(STEPS * step, SCATTER * Math.abs(size));
/** Wear beyond which a part is hardly ever still in service, m, as a share of its size, of large ones a smaller one (common practice, no source). */
const goneAt = (size: number): number => Math.max(0.25e-3, Math.min(0.01 * size, 0.5e-3 + 0.003 * size));
/** What a worn surface differs by from place to place, as a share of its wear (common practice, no source). */
const UNEVEN = 0.3;
/** Share of them that wear evenly all over. */
const EVENLY = 0.1;
/** Standard deviation of what is lost by rounding, in steps of the last figure. */
const ROUNDED = Math.sqrt(1 / 12);
/** For what cannot be, as a logarithm. */
const NEVER = Math.log(1 / 30);
/** Usual difference of parts that are alike, m: of large ones a smaller share of their size (common practice, no source). */
const alikeBy = (size: number): number => Math.min(5e-4 * size, 1e-5 + 2e-4 * size);
/** And of one that was cut to another size, as a share of it. */
const RECUT = 0.01;

/** Share of the pressed parts that are tighter or looser than is usual (common practice, no source). */
const UNUSUAL = 0.04;

/** What is usual is known as well as so many readings would tell. */
const KNOWN = 1.5;

/** Share of the surfaces read once at each place that are worn to a form of their own, such as bell-mouthed (common practice, no source). */
const FORMED = 0.05;
/** And where another of the readings stands apart from the rest by a good part of what this one does. */
const SHOWN = 0.5;

/** However many readings there are, now and then one is farther out than they scatter. */
const MOST_FREE = 5;

/** Logarithm of Student's t about `middle`; its constant is near 0.35 for any number of degrees of freedom. */
const student =
  (middle: number, scale: number, dof: number) =>
  (x: number): number =>
    Math.log(0.35 / scale) - ((dof + 1) / 2) * Math.log1p(((x - middle) / scale) ** 2 / dof);

/** Of two densities mixed, as logarithms. */
const mixed = (share: number, a: number, b: number): number => {
  const most = Math.max(a, b);
  return most + Math.log(share * Math.exp(a - most) + (1 - share) * Math.exp(b - most));
};

interface Fit {
  middle: number;
  /** Sum of the squares that are left, and of how many free readings. */
  squares: number;
  free: number;
  /** Variance of a new reading about the middle, in variances of a reading. */
  spread: number;
}

/** One scatter about one mean. */
function about(values: readonly number[]): Fit {
  const middle = values.reduce((a, b) => a + b, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - middle) ** 2, 0);
  return { middle, squares, free: values.length - 1, spread: 1 + 1 / values.length };
}

/** With what the readings at the other places differ by there, where each place tells of itself: one gauge read them all. */
function withScatter(fit: Fit, { literals, stations }: Datum, index: number): Fit {
  const own = stations[index];
  if (stations.filter((one) => one === own).length < 3) return fit;
  const places = new Map<number, number[]>();
  literals.forEach(({ value }, i) => {
    const at = stations[i] as number;
    if (at === own) return;
    const there = places.get(at);
    if (there) there.push(value);
    else places.set(at, [value]);
  });
  const all = [...places.values()].map(about);
  return {
    ...fit,
    squares: all.reduce((sum, one) => sum + one.squares, fit.squares),
    free: all.reduce((sum, one) => sum + one.free, fit.free),
  };
}

/** A list as a table of stations along by places around, of deviations from its first reading, and its sums. */
interface Table {
  rows: number;
  columns: number;
  deviations: number[];
  /** Of every station, and of every place around. */
  along: number[];
  around: number[];
  total: number;
  squares: number;
}

const tables = new WeakMap<Datum, { table: Table | undefined }>();

/** Undefined where the readings are no table, or too small a one to tell whether it is so. */
function tableOf(datum: Datum): Table | undefined {
  const known = tables.get(datum);
  if (known) return known.table;
  const rows = (datum.stations.at(-1) ?? 0) + 1;
  const columns = datum.literals.length / rows;
  const fits =
    Number.isInteger(columns) &&
    (rows - 1) * (columns - 1) >= 2 &&
    datum.stations.every((one, i) => one === Math.floor(i / columns));
  const table = fits ? summed(datum, rows, columns) : undefined;
  tables.set(datum, { table });
  return table;
}

function summed(datum: Datum, rows: number, columns: number): Table {
  const first = datum.literals[0]?.value ?? 0;
  const deviations = datum.literals.map((one) => one.value - first);
  const along = new Array<number>(rows).fill(0);
  const around = new Array<number>(columns).fill(0);
  deviations.forEach((x, i) => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    along[row] = (along[row] as number) + x;
    around[column] = (around[column] as number) + x;
  });
  const total = along.reduce((a, b) => a + b, 0);
  return { rows, columns, deviations, along, around, total, squares: sumOfSquares(deviations) };
}

const sumOfSquares = (values: readonly number[]): number => values.reduce((sum, x) => sum + x * x, 0);

/**
 * Taper and out-of-round as worn surfaces have them: a reading is its station along the list plus its place around, and
 * the one asked about is what the rest of the table leaves for it (Yates's formula for a missing plot).
 */
function ofTable(datum: Datum, index: number): Fit | undefined {
  const table = tableOf(datum);
  if (!table) return undefined;
  const { rows, columns, deviations } = table;
  const free = (rows - 1) * (columns - 1);
  const own = deviations[index] as number;
  const [row, column] = [Math.floor(index / columns), index % columns];
  const along = (table.along[row] as number) - own;
  const around = (table.around[column] as number) - own;
  const x = (rows * along + columns * around - (table.total - own)) / free;
  const put = x - own;
  // What the additive model leaves of the table with that in its place, from its sums.
  const squares =
    table.squares -
    own * own +
    x * x -
    (sumOfSquares(table.along) - (table.along[row] as number) ** 2 + (along + x) ** 2) / columns -
    (sumOfSquares(table.around) - (table.around[column] as number) ** 2 + (around + x) ** 2) / rows +
    (table.total + put) ** 2 / (rows * columns);
  return {
    middle: (datum.literals[0]?.value ?? 0) + x,
    squares: Math.max(0, squares),
    free: free - 1,
    spread: 1 + (rows + columns - 1) / free,
  };
}

/**
 * By the rest of its list, with how far off it is, SI and in what such lists scatter: as scatter about one mean, and as taper and out-of-round, each as far as the rest bears it
 * out.
 */
export function byGroup(datum: Datum, index: number, step: number): Belief & { odd: number; gap: number } {
  const others = othersOf(datum, index);
  const plain = withScatter(about(others), datum, index);
  const table = ofTable(datum, index);
  // The least of them all, so that of two readings neither is taken for the better one.
  const size = Math.min(...datum.literals.map((one) => Math.abs(one.value)));
  const usual = usualScatter(size, step);
  // What is usual counts as so many readings more.
  const scatter = ({ squares, free }: Fit): number =>
    Math.sqrt(Math.max((KNOWN * usual ** 2 + squares) / (KNOWN + free), step ** 2 / 4));
  const density = (fit: Fit) =>
    student(fit.middle, scatter(fit) * Math.sqrt(fit.spread), Math.min(KNOWN + fit.free, MOST_FREE));
  const asOne = density(plain);
  const value = datum.literals[index]?.value ?? 0;
  const off = (fit: Fit): { odd: number; gap: number } => {
    const gap = Math.abs(value - fit.middle);
    return { gap, odd: gap / (scatter(fit) * Math.sqrt(fit.spread)) };
  };
  if (!table) {
    const formed = isAlongOnly(datum)
      ? wideAbout(plain.middle, usual, Math.max(2 * usual, UNEVEN * goneAt(size)))
      : undefined;
    const rest = datum.literals.filter((_, i) => i !== index).map((one) => one.value);
    const isShown = 4 * (Math.max(...rest) - Math.min(...rest)) > Math.abs(value - plain.middle);
    const share = isShown ? SHOWN : FORMED;
    const at = formed ? (x: number): number => mixed(share, formed(x), asOne(x)) : asOne;
    return { at, peak: at(plain.middle), ...off(plain) };
  }
  const asTable = density(table);
  // How likely the rest is either way: what a table fits with more freedom might have been anywhere in their range.
  const range = Math.max(...others) - Math.min(...others) + usual;
  const better =
    plain.free * Math.log(scatter(plain)) -
    table.free * Math.log(scatter(table)) -
    (plain.free - table.free) * Math.log(range);
  const share = 1 / (1 + Math.exp(-better));
  const at = (x: number): number => mixed(share, asTable(x), asOne(x));
  return { at, peak: Math.max(at(table.middle), at(plain.middle)), ...off(share > 0.5 ? table : plain) };
}

/** One reading at each of several places: the form of the surface is not to be told from scatter. */
const isAlongOnly = ({ literals, stations }: Datum): boolean =>
  literals.length > 2 && (stations.at(-1) ?? 0) === literals.length - 1;

/** Every order of magnitude of how far it is off about as likely, from `least` to `most` either way; a logarithm. */
const wideAbout =
  (middle: number, least: number, most: number) =>
  (x: number): number => {
    const d = Math.abs(x - middle);
    const share = Math.min(1, most / Math.max(d, least)) ** 3;
    return Math.log(share / (2 * (d + least) * Math.log((most + least) / least)));
  };

/**
 * By a plan, limits, the other part of a fit, or the lines like it. `range` is what its readings at several places differ by: what
 * wears does so unevenly.
 */
export function byExpectation(
  { by, low, high, worn, never, many = 1 }: Expectation,
  step: number,
  range?: number,
): Belief {
  const size = Math.max(Math.abs(low), Math.abs(high));
  const middle = (low + high) / 2;
  if (by === 'plan') {
    const cut = student(middle, Math.max(Math.hypot((high - low) / 4, ROUNDED * step), step / 2), 3);
    return { at: cut, peak: cut(middle) };
  }
  if (by === 'alike') {
    // Most are as the others are; now and then one was cut to another size.
    // The one farthest off is not among them: what they differ by counts for half as many.
    const free = (many - 1) / 2;
    const scale = Math.sqrt((KNOWN * alikeBy(size) ** 2 + free * (high - low) ** 2) / (KNOWN + free));
    const alike = student(middle, Math.max(scale, step), Math.min(2 + free, MOST_FREE));
    const recut = student(middle, RECUT * size, 2);
    const at = (x: number): number => mixed(0.98, alike(x), recut(x));
    return { at, peak: at(middle) };
  }
  const band = Math.max(high - low, 3 * step, SCATTER * size);
  const gone = goneAt(size);
  // Every order of magnitude of wear is about as likely, from what cannot be told from none to worn out.
  const byWear = (d: number): number =>
    ((by === 'limits' ? evenness(d, range, step) : 1) * Math.min(1, gone / d) ** 3) /
    ((d + band) * Math.log((gone + band) / band));
  const byOther = (d: number): number => band / 2 / (d + band / 2) ** 2;
  const beyond = (d: number, way: 'low' | 'high'): number =>
    worn === 'either'
      ? 0.25 * byWear(d)
      : worn === way
        ? 0.45 * byWear(d)
        : (worn === undefined ? (by === 'pair' ? UNUSUAL : 0.1) : 0.025) * byOther(d);
  const isNever = (x: number): boolean =>
    x < (never?.low ?? Number.NEGATIVE_INFINITY) || x > (never?.high ?? Number.POSITIVE_INFINITY);
  return {
    at: (x) =>
      (isNever(x) ? NEVER : 0) +
      Math.log(x < low ? beyond(low - x, 'low') : x > high ? beyond(x - high, 'high') : 0.5 / band),
    peak: Math.log(0.5 / band),
  };
}

/** Share of the surfaces worn by `d` that differ by no more than `range` from place to place. */
const evenness = (d: number, range: number | undefined, step: number): number =>
  range === undefined ? 1 : Math.min(1, Math.max(EVENLY, (range + 2 * step) / (UNEVEN * d)));

/** By what the gauge it was read with reaches: another was at hand now and then. */
export const byRange = (low: number, high: number): Belief => ({
  at: (x) => (Math.abs(x) < low || Math.abs(x) > high ? Math.log(1 / 30) : 0),
  peak: 0,
});
