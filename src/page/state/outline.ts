import type { CheckVerdict, Verdict } from '../../../shared/check.ts';
import type { CellResult, LimitFigures, OutputResult } from '../../engine/results.ts';
import { keepEqual } from './keep-equal.ts';

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

const sameBy = (a: CheckVerdict, b: CheckVerdict): boolean =>
  a.asNew.by === b.asNew.by && a.inService?.by === b.inService?.by;

const sameTexts = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((text, i) => text === b[i]);

/** Nearly all are empty. */
const keepList = <T>(before: T[], now: T[]): T[] =>
  before.length === 0 && now.length === 0 ? before : keepEqual(before, now);

/**
 * Takes those parts of a result that are no figures from the one before where they are equal, so that who hangs on them
 * is not asked again. Changes `now` in place, which must be nobody else's.
 * @returns whether the two differ in nothing but their figures, and in by how much limits are kept.
 */
export const keepOutline = (before: CellResult, now: CellResult): boolean => {
  now.problems = keepList(before.problems, now.problems);
  now.remarks = keepList(before.remarks, now.remarks);
  now.slips = keepList(before.slips, now.slips);
  now.echoes = keepEqual(before.echoes, now.echoes);
  if (sameTexts(before.feeds, now.feeds)) now.feeds = before.feeds;
  let same =
    now.problems === before.problems &&
    now.remarks === before.remarks &&
    now.slips === before.slips &&
    now.echoes === before.echoes &&
    now.feeds === before.feeds;
  let count = 0;
  for (const name in now.outputs) {
    count++;
    const [old, output] = [before.outputs[name], now.outputs[name]];
    if (!old || !output) {
      same = false;
      continue;
    }
    if (sameCheck(old.check, output.check) && sameBy(old.check, output.check)) output.check = old.check;
    if (output.problem) output.problem = keepEqual(old.problem, output.problem);
    if (!sameOutput(old, output)) same = false;
  }
  for (const _ in before.outputs) count--;
  return same && count === 0;
};
