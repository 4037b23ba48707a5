import type { CheckVerdict, Verdict } from '../../../shared/check.ts';
import type { CellResult, LimitFigures, OutputResult } from '../../engine/results.ts';

const sameVerdict = (a: Verdict | undefined, b: Verdict | undefined): boolean =>
  a === b || (a?.state === b?.state && a?.at === b?.at && a?.side === b?.side);

const sameCheck = (a: CheckVerdict, b: CheckVerdict): boolean =>
  a === b ||
  (sameVerdict(a.asNew, b.asNew) &&
    sameVerdict(a.inService, b.inService) &&
    a.rule === b.rule &&
    a.words === b.words &&
    a.note === b.note);

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
    a.stands === b.stands &&
    a.quantity === b.quantity &&
    a.label === b.label &&
    a.display === b.display &&
    a.logical === b.logical &&
    a.idle === b.idle &&
    a.problem === b.problem &&
    sameCheck(a.check, b.check) &&
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
