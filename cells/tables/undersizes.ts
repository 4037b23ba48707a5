import type { TableProblem } from './table.ts';
import { inch, mm } from './table.ts';

/**
 * Sizes spare bushes and shells are made to: how much under a journal is ground, how much over a bore is cut. Common
 * practice, no source; a maker's own list comes first.
 */
export const undersizeSeries = {
  /** Regrind steps, inch. */
  inch: [0.01, 0.02, 0.03, 0.04, 0.05, 0.06].map(inch),
  /** Regrind steps, mm. */
  mm: [0.25, 0.5, 0.75, 1, 1.25, 1.5].map(mm),
  /** Shells for polishing only, inch. */
  'inch polish': [0.001, 0.002].map(inch),
  /** Shells for polishing only, mm. */
  'mm polish': [0.025, 0.05].map(mm),
} as const;

export const oversizeSeries = {
  inch: [0.01, 0.02, 0.03, 0.04, 0.06].map(inch),
  mm: [0.25, 0.5, 0.75, 1, 1.5].map(mm),
} as const;

export type SizeSeries = keyof typeof oversizeSeries;

/** Steps are compared to a nanometre, so that 0.030 in asked is 0.030 in found. */
const slack = 1e-9;

const chosen = (
  steps: readonly number[],
  reach: number,
  words: { what: string; remedy: string },
  series: string,
): { step: number; number: number } | TableProblem => {
  if (!Number.isFinite(reach)) return { problem: `The ${words.what} is not known yet.` };
  const at = steps.findIndex((step) => step >= reach - slack);
  if (at < 0)
    return {
      problem: `No standard ${words.what} in the ${series} series reaches ${(reach * 1000).toFixed(3)} mm (${(reach / 0.0254).toFixed(4)} in): the largest is ${(steps[steps.length - 1]! * 1000).toFixed(2)} mm. ${words.remedy}`,
    };
  return { step: steps[at]!, number: at + 1 };
};

/** The smallest standard undersize at which a journal of `nominal` that cleans up at `cleanUp` or less is cut. Metres. */
export const nextUndersize = (
  nominal: number,
  cleanUp: number,
  series: keyof typeof undersizeSeries,
): { under: number; size: number; number: number } | TableProblem => {
  const found = chosen(
    undersizeSeries[series],
    nominal - cleanUp,
    { what: 'undersize', remedy: 'Build the journal up, or have the bush made to suit.' },
    series,
  );
  return 'problem' in found ? found : { under: found.step, size: nominal - found.step, number: found.number };
};

/** The smallest standard oversize at which a bore of `nominal` that cleans up at `cleanUp` or more is cut. Metres. */
export const nextOversize = (
  nominal: number,
  cleanUp: number,
  series: SizeSeries,
): { over: number; size: number; number: number } | TableProblem => {
  const found = chosen(
    oversizeSeries[series],
    cleanUp - nominal,
    { what: 'oversize', remedy: 'Sleeve the bore, or have the part made to suit.' },
    series,
  );
  return 'problem' in found ? found : { over: found.step, size: nominal + found.step, number: found.number };
};
