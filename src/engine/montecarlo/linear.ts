import { coverageFactor } from '../../../shared/statistics/coverage.ts';
import type { Figure } from '../rows/results.ts';
import type { Comparison } from './types.ts';

/**
 * Numerical tolerance of a standard uncertainty: half of one in its second significant figure (JCGM 101, 7.9.2 with
 * two figures). 0 for no uncertainty.
 */
function toleranceOf(u: number): number {
  if (!(u > 0)) return 0;
  const [digits = '1', power = '0'] = u.toExponential(1).split('e');
  return digits === '' ? 0 : 0.5 * 10 ** (Number(power) - 1);
}

/** Standard error of an end of a simulated interval, in standard deviations times the square root of the draws. */
const END_ERROR = 3;

/**
 * Sets the linear figure against the simulated interval (JCGM 101, 8.1). Near the least width many intervals are equally
 * short but for chance, and where they lie is chance too: where `symmetric` is as short as the draws can tell, that one
 * is compared.
 */
export function compare(
  figure: Figure,
  { shortest, symmetric }: Record<'shortest' | 'symmetric', { low: number; high: number }>,
  deviation: number,
  draws: number,
  coverage: number,
): Comparison {
  const half = coverageFactor(figure.dof, coverage) * figure.u;
  const low = figure.value - half;
  const high = figure.value + half;
  const tolerance = toleranceOf(figure.u);
  const noise = (END_ERROR * deviation) / Math.sqrt(draws);
  const isAsShort = symmetric.high - symmetric.low <= shortest.high - shortest.low + noise;
  const interval = isAsShort ? symmetric : shortest;
  const offLow = Math.abs(low - interval.low);
  const offHigh = Math.abs(high - interval.high);
  const off = Math.max(offLow, offHigh);
  // Digits that arithmetic leaves are no difference.
  const hair = Math.abs(figure.value) * 1e-12;
  const verdict =
    off <= tolerance + hair ? 'agrees' : off > tolerance + 2 * noise + hair ? 'misleads' : 'more draws';
  return { low, high, tolerance, offLow, offHigh, noise, verdict };
}
