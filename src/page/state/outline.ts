import { isAlike, isSameSetting } from '../../engine/report/steady.ts';
import type { CellResult, LimitFigures, OutputResult } from '../../engine/rows/results.ts';

const bothOrNone = (a: unknown, b: unknown): boolean => (a === undefined) === (b === undefined);

const sameLimits = (a: LimitFigures | undefined, b: LimitFigures | undefined): boolean =>
  a === b ||
  (bothOrNone(a, b) &&
    bothOrNone(a?.lower, b?.lower) &&
    bothOrNone(a?.upper, b?.upper) &&
    bothOrNone(a?.wear, b?.wear) &&
    a?.metalOn === b?.metalOn);

const sameOutput = (a: OutputResult, b: OutputResult): boolean =>
  a === b ||
  (bothOrNone(a.planned, b.planned) &&
    bothOrNone(a.planned?.aim, b.planned?.aim) &&
    bothOrNone(a.measured, b.measured) &&
    bothOrNone(a.difference, b.difference) &&
    bothOrNone(a.replanned, b.replanned) &&
    a.problem === b.problem &&
    isSameSetting(a, b) &&
    isAlike(a.check, b.check) &&
    sameLimits(a.limits, b.limits));

/**
 * Whether two results of a cell differ in nothing but their figures, and in by how much limits are kept. Parts that did
 * not change are the same objects in both, as the engine hands them over.
 */
export const sameOutline = (a: CellResult, b: CellResult): boolean => {
  if (a.problems !== b.problems || a.remarks !== b.remarks || a.slips !== b.slips) return false;
  if (a.echoes !== b.echoes || a.feeds !== b.feeds) return false;
  let count = 0;
  for (const name in b.outputs) {
    const [before, now] = [a.outputs[name], b.outputs[name]];
    if (!before || !now || !sameOutput(before, now)) return false;
    count++;
  }
  for (const _ in a.outputs) count--;
  return count === 0;
};
