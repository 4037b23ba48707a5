import { coverageFactor } from '../../../shared/coverage.ts';
import type { Figure } from '../results.ts';
import type { Comparison } from './types.ts';

/**
 * Numerical tolerance of a standard uncertainty: half of one in its second significant figure (JCGM 101, 7.9.2 with
 * two figures). 0 for no uncertainty.
 */
export function toleranceOf(u: number): number {
  if (!(u > 0)) return 0;
  const [digits = '1', power = '0'] = u.toExponential(1).split('e');
  return digits === '' ? 0 : 0.5 * 10 ** (Number(power) - 1);
}

/** Standard error of an end of a simulated interval, in standard deviations times the square root of the draws. */
const END_ERROR = 3;

/** Sets the linear figure against the simulated interval (JCGM 101, 8.1). */
export function compare(
  figure: Figure,
  interval: { low: number; high: number },
  deviation: number,
  draws: number,
  coverage: number,
): Comparison {
  const half = coverageFactor(figure.dof, coverage) * figure.u;
  const low = figure.value - half;
  const high = figure.value + half;
  const tolerance = toleranceOf(figure.u);
  const offLow = Math.abs(low - interval.low);
  const offHigh = Math.abs(high - interval.high);
  const noise = (END_ERROR * deviation) / Math.sqrt(draws);
  const off = Math.max(offLow, offHigh);
  // Digits that arithmetic leaves are no difference.
  const hair = Math.abs(figure.value) * 1e-12;
  const verdict =
    off <= tolerance + hair ? 'agrees' : off > tolerance + 2 * noise + hair ? 'misleads' : 'more draws';
  return { low, high, tolerance, offLow, offHigh, noise, verdict };
}
