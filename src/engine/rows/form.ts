import { dimension, sameDimension } from '../../../shared/dimension.ts';
import { expandedFactor } from '../../../shared/statistics/coverage.ts';
import type { Entry, Expr } from '../../language/syntax/syntax.ts';
import { call, constant, minus, plus, times } from './expr.ts';
import type { ReadingFigures } from './statistics.ts';

/**
 * What readings by places and directions tell of a surface, and what they cannot. Taper and out-of-round belong to the
 * part: they do not average out over more readings of the same places, as the scatter of the gauge does. A surface is
 * taken as one size, plus a part along it, plus a part around it; how far mean, least and greatest may lie from what was
 * read is a share of the taper and the out-of-round that show, by the number of places and of directions. The shares are
 * from simulated surfaces (taper, bell mouth, two and four lobes, growing along or not; `npm run slips` tells their
 * coverage), and no published figures.
 */
interface Shares {
  /** Of what shows: how far the true mean may lie from that of the readings. */
  mean: number;
  /** And the true extreme beyond the extreme that was read. */
  beyond: number;
}

/**
 * By the number of places: one, two, three, four and more. Of one, the taper is taken to be as the out-of-round is for the
 * mean of the part, and nothing is said of the extremes but where they were read.
 */
const ALONG: readonly Shares[] = [
  { mean: 0.5, beyond: 0 },
  { mean: 0.6, beyond: 0.5 },
  { mean: 0.25, beyond: 0.3 },
  { mean: 0.2, beyond: 0.25 },
];
/**
 * By the number of directions. Two at right angles show of an oval the cosine of twice the angle they lie at, and nothing
 * of it halfway: by so much one surface is farther out in one case of ten, and a fit of two alike in one of forty.
 */
const AROUND: readonly Shares[] = [
  { mean: 2.6, beyond: 0 },
  { mean: 0.3, beyond: 2.8 },
  { mean: 0.12, beyond: 0.3 },
  { mean: 0.1, beyond: 0.25 },
];
/** Beyond the extremes of one line, and of one section: other directions, other places tell nothing of it. */
const ALONG_ONCE = [0, 1.3, 0.3, 0.25];
const AROUND_ONCE = [0, 6, 0.6, 0.3];
/** Of the greater of taper and out-of-round: what neither shows where it was read. */
const HIDDEN: Shares = { mean: 0.12, beyond: 0.5 };

const sharesOf = <T>(by: readonly T[], n: number): T => by[Math.min(n, by.length) - 1] as T;

/**
 * The known scatter of a gauge counts as so many degrees of freedom where readings are pooled with it (JCGM 100:2008,
 * 4.2.4 and G.4.2: known to about an eighth).
 */
const KNOWN = 30;
/** Beyond so many times its known variance, what readings scatter is not the gauge's. */
const MORE = 3;
/** Expanded uncertainty (95 %) of a mean by its scatter, with what it takes to read it back. */
export interface Scatter {
  /** Half-width, SI. */
  reach: Expr;
  k: number;
  dof: number;
}

const square = (expr: Expr): Expr => times(expr, expr);

/**
 * Scatter of a list read with a gauge whose own scatter is known: pooled, by Student's t. Along one line, or at one place,
 * more scatter than the gauge's may be form or not: the list then stands for itself.
 */
export function pooledScatter(
  figures: ReadingFigures,
  repeatability: Expr,
  resolution: Expr,
): { pooled: Scatter; own?: Scatter; variance: Expr } {
  const { n, residual, deviation = 0 } = figures;
  const gauge = square(repeatability);
  const most = times(constant(MORE * residual.dof), gauge);
  const squares = plus(times(constant(KNOWN), gauge), call('MIN', constant(residual.squares), most));
  const dof = KNOWN + residual.dof;
  const variance = times(constant(1 / dof), squares);
  const k = expandedFactor(dof);
  const resolved = times(constant(1 / 12), square(resolution));
  const reachOf = (factor: number, of: Expr): Expr =>
    times(constant(factor), call('SQRT', plus(of, resolved)));
  const reach = reachOf(k, times(constant(1 / n), variance));
  if (figures.places > 1 && figures.directions > 1) return { pooled: { reach, k, dof }, variance };
  const isMore: Expr = {
    kind: 'compare',
    op: '>',
    left: constant(deviation ** 2),
    right: times(constant(MORE), gauge),
    from: 0,
    to: 0,
  };
  const factor = expandedFactor(n - 1);
  const alone = reachOf(factor, constant(deviation ** 2 / n));
  return {
    pooled: { reach: call('IF', isMore, constant(0), reach), k, dof },
    own: { reach: call('IF', isMore, alone, constant(0)), k: factor, dof: n - 1 },
    variance,
  };
}

/** How far off the readings may be for the form they do not show, SI. */
export interface Form {
  /** Of the true mean, either way. */
  mean: Expr;
  /** Of the extremes, outwards. */
  beyond: Expr;
  /** Of taper and out-of-round, upwards. */
  taper: Expr;
  outOfRound: Expr;
}

/** @param variance of one reading: what of taper and out-of-round it explains is not the part's. */
export function formOf(figures: ReadingFigures, variance: Expr): Form {
  const { places, directions, outOfRound } = figures;
  // Beyond 95 % of the ranges that scatter alone gives; of many readings the range is wider.
  const noise = (readings: number, more: number): Expr =>
    times(constant((4 / readings) * (1 + more / 2)), variance);
  const left = (range: number, by: Expr): Expr =>
    call('SQRT', call('MAX', constant(0), minus(constant(range ** 2), by)));
  const taper = places > 1 ? left(figures.along, noise(directions, places - 2)) : undefined;
  const round =
    figures.n > places
      ? left(outOfRound, noise(1, Math.max(0, directions - 2) + 0.7 * (places - 1)))
      : undefined;
  const nothing = constant(0);
  const [t, o] = [taper ?? round ?? nothing, round ?? taper ?? nothing];
  const [along, around] = [sharesOf(ALONG, places), sharesOf(AROUND, directions)];
  const a = directions > 1 ? along : { ...along, beyond: sharesOf(ALONG_ONCE, places) };
  const b = places > 1 ? around : { ...around, beyond: sharesOf(AROUND_ONCE, directions) };
  const greater = call('MAX', t, o);
  const hidden = places > 1 && directions > 1 ? HIDDEN.beyond : 0;
  const joined = (x: number, y: number): Expr =>
    call('SQRT', plus(square(times(constant(x), t)), square(times(constant(y), o))));
  return {
    mean: call('MAX', joined(a.mean, b.mean), times(constant(HIDDEN.mean), greater)),
    beyond: plus(joined(a.beyond, b.beyond), times(constant(hidden), greater)),
    taper: plus(times(constant(2 * a.beyond), t), times(constant(hidden), greater)),
    outOfRound: plus(times(constant(2 * b.beyond), o), times(constant(hidden), greater)),
  };
}

const LENGTH = dimension(1);

/** Lengths read more than once: of what else there is repeated readings are one figure, and their mean is judged. */
export const hasForm = (entry: Entry): boolean => {
  const read =
    entry.kind === 'range' ? [entry.low] : entry.kind === 'readings' ? entry.stations.flat() : undefined;
  return read?.every((one) => sameDimension(one.dimension, LENGTH)) ?? false;
};
