import { gradeSteps } from './grades.ts';
import { deviationSteps, gradeBoundSteps } from './shaft-deviations.ts';

/** Nominal sizes, metres, up to which a row of some table of ISO 286 reaches: a deviation may jump there, and nowhere else. */
export const sizeSteps: readonly number[] = [
  ...new Set([1, ...[gradeSteps, deviationSteps, gradeBoundSteps].flat().map((step) => step.to)]),
]
  .sort((a, b) => a - b)
  .map((size) => size / 1000);
