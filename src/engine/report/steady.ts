import type { CheckVerdict, Verdict } from '../../../shared/checks/check.ts';
import type { Problem } from '../../../shared/problem.ts';
import type { CellResult, Figure, LimitFigures, OutputResult, Remark, Slip } from '../rows/results.ts';

/**
 * A result in which every part that says the same as the one before is that very object, so that whoever shows it or
 * hands it on sees at a glance what changed.
 */
export function steady(now: CellResult, before: CellResult): CellResult {
  const { outputs } = now;
  let same = true;
  let count = 0;
  for (const name in outputs) {
    const old = before.outputs[name];
    const own = outputs[name] as OutputResult;
    const kept = old ? steadyOutput(own, old) : own;
    if (kept !== own) outputs[name] = kept;
    if (kept !== old) same = false;
    count++;
  }
  if (same) for (const _ in before.outputs) count--;
  if (same && count === 0) now.outputs = before.outputs;
  if (isSameList(now.problems, before.problems, isSameProblem)) now.problems = before.problems;
  if (isSameList(now.remarks, before.remarks, isSameRemark)) now.remarks = before.remarks;
  if (isSameList(now.slips, before.slips, isSameSlip)) now.slips = before.slips;
  if (isSameRecord(now.echoes, before.echoes)) now.echoes = before.echoes;
  if (isSameList(now.feeds, before.feeds, Object.is)) now.feeds = before.feeds;
  return now;
}

function steadyOutput(now: OutputResult, before: OutputResult): OutputResult {
  if (isSameVerdict(now.check, before.check)) now.check = before.check;
  if (isSameFigure(now.planned, before.planned)) now.planned = before.planned as Figure;
  if (isSameFigure(now.measured, before.measured)) now.measured = before.measured as Figure;
  if (isSameFigure(now.difference, before.difference)) now.difference = before.difference as Figure;
  if (isSameFigure(now.replanned, before.replanned)) now.replanned = before.replanned as Figure;
  if (now.limits && before.limits) now.limits = steadyLimits(now.limits, before.limits);
  if (now.problem && before.problem && isSameProblem(now.problem, before.problem))
    now.problem = before.problem;
  const same =
    isSameSetting(now, before) &&
    now.check === before.check &&
    now.planned === before.planned &&
    now.measured === before.measured &&
    now.difference === before.difference &&
    now.replanned === before.replanned &&
    now.limits === before.limits &&
    now.problem === before.problem;
  return same ? before : now;
}

function steadyLimits(now: LimitFigures, before: LimitFigures): LimitFigures {
  if (isSameFigure(now.lower, before.lower)) now.lower = before.lower as Figure;
  if (isSameFigure(now.upper, before.upper)) now.upper = before.upper as Figure;
  if (isSameFigure(now.wear, before.wear)) now.wear = before.wear as Figure;
  const same =
    now.metalOn === before.metalOn &&
    now.lower === before.lower &&
    now.upper === before.upper &&
    now.wear === before.wear;
  return same ? before : now;
}

/** What of an output is neither figure, verdict nor problem. */
export const isSameSetting = (a: OutputResult, b: OutputResult): boolean =>
  a.quantity === b.quantity &&
  a.label === b.label &&
  a.display === b.display &&
  a.stands === b.stands &&
  a.logical === b.logical &&
  a.idle === b.idle;

/** Two figures that say the same; not where one of them is none. */
const isSameFigure = (a: Figure | undefined, b: Figure | undefined): boolean =>
  a !== undefined &&
  b !== undefined &&
  (a === b ||
    (Object.is(a.value, b.value) &&
      Object.is(a.low, b.low) &&
      Object.is(a.high, b.high) &&
      Object.is(a.centre, b.centre) &&
      Object.is(a.u, b.u) &&
      Object.is(a.dof, b.dof) &&
      Object.is(a.aim, b.aim)));

const isSameVerdict = (a: CheckVerdict, b: CheckVerdict): boolean =>
  isAlike(a, b) &&
  Object.is(a.k, b.k) &&
  Object.is(a.asNew.by, b.asNew.by) &&
  Object.is(a.inService?.by, b.inService?.by);

/** Verdicts that differ in nothing but by how much. */
export const isAlike = (a: CheckVerdict, b: CheckVerdict): boolean =>
  a === b ||
  (a.rule === b.rule &&
    a.words === b.words &&
    a.note === b.note &&
    (a.k === undefined) === (b.k === undefined) &&
    isAlikeAt(a.asNew, b.asNew) &&
    (a.inService === b.inService ||
      (a.inService !== undefined && b.inService !== undefined && isAlikeAt(a.inService, b.inService))));

const isAlikeAt = (a: Verdict, b: Verdict): boolean =>
  a.state === b.state && a.at === b.at && a.side === b.side && (a.by === undefined) === (b.by === undefined);

const isSameProblem = (a: Problem, b: Problem): boolean =>
  a === b || (a.message === b.message && JSON.stringify(a) === JSON.stringify(b));

const isSameSlip = (a: Slip, b: Slip): boolean =>
  a.key === b.key && a.field === b.field && a.message === b.message && a.offer === b.offer;

const isSameRemark = (a: Remark, b: Remark): boolean => a.grade === b.grade && a.message === b.message;

function isSameList<T>(a: readonly T[], b: readonly T[], same: (x: T, y: T) => boolean): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!same(a[i] as T, b[i] as T)) return false;
  return true;
}

function isSameRecord(a: Readonly<Record<string, string>>, b: Readonly<Record<string, string>>): boolean {
  if (a === b) return true;
  let count = 0;
  for (const key in a) {
    if (a[key] !== b[key]) return false;
    count++;
  }
  for (const _ in b) count--;
  return count === 0;
}
