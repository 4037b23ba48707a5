import type { Problem } from '../../../shared/problem.ts';

export interface SimulationOptions {
  /** Draws of the whole sheet; 200,000 where absent. */
  draws?: number;
  /** The same seed gives the same draws. */
  seed?: number;
  /** Share of the values in the coverage interval. */
  coverage?: number;
  /** As-measured values are left out when false. */
  measured?: boolean;
}

/** Counts in bins of equal width between `from` and `to`, SI, and how many lie beyond either end. */
export interface Histogram {
  from: number;
  to: number;
  counts: number[];
  below: number;
  above: number;
}

/** Share of the draws within the limits, and beyond each of them (JCGM 106). */
export interface Conformance {
  within: number;
  belowLower?: number;
  aboveUpper?: number;
  beyondWear?: number;
}

/** The linear figure beside the simulated one (JCGM 101, clause 8). */
export interface Comparison {
  /** Linear coverage interval: nominal ± t u, SI. */
  low: number;
  high: number;
  /** Half of the second significant figure of the standard uncertainty, SI. */
  tolerance: number;
  /** How far the simulated interval lies from the linear one at either end, SI. */
  offLow: number;
  offHigh: number;
  /** What chance alone may move an end by with so many draws, SI. */
  noise: number;
  /** `more draws`: chance alone may be what sets them apart. */
  verdict: 'agrees' | 'misleads' | 'more draws';
}

/** One output of a cell over all draws, SI. */
export interface SimulatedOutput {
  cell: string;
  output: string;
  mean: number;
  deviation: number;
  /** Shortest coverage interval. */
  low: number;
  high: number;
  histogram: Histogram;
  conformance?: Conformance;
  linear: Comparison;
  /** Draws in which it could not be computed; they count as not within limits. */
  failed: number;
}

export interface Simulation {
  draws: number;
  seed: number;
  coverage: number;
  outputs: SimulatedOutput[];
  /** Outputs that have no value to simulate, and why. */
  without: { cell: string; output: string; problem?: Problem }[];
}
