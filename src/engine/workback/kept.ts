import { gradeOf } from '../../../shared/checks/states.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { coverageFactor, expandedFactor } from '../../../shared/statistics/coverage.ts';
import type { Computed } from '../computed.ts';
import type { CellResult } from '../rows/results.ts';
import { nominalOf } from '../trial/path.ts';
import { type TrialSheet, withEntry } from '../trial/trial-sheet.ts';
import type { Question, Solution } from './question.ts';
import { planAt, prepare, workBack, written } from './work-back.ts';

/** Times an answer is worked out anew with the last one in. */
const TURNS = 4;
/** Steps to the side on which a limit is kept, each twice the last, and halvings back. */
const STEPS = 24;
const HALVINGS = 12;

/** True where the rule has a limit kept, as the verdict has it: by the margin, or by draws where those decide. */
export function isKept(book: Computed, result: CellResult | undefined, { figure, want }: Question): boolean {
  const check = result?.outputs[figure.output]?.check;
  const plan = planAt(book, figure);
  if (!check || !plan || want.at === 'value' || want.at === 'middle') return false;
  if (check.method === 'draws') {
    const verdict = want.at === 'wear' ? check.inService : check.asNew;
    const grade = verdict && gradeOf(verdict.state);
    return (
      grade === 'in' ||
      grade === 'near' ||
      (grade !== undefined && verdict?.at !== undefined && verdict.at !== want.at)
    );
  }
  const { limits } = plan;
  const key =
    want.at === 'lower'
      ? limits?.lowerMargin
      : want.at === 'upper'
        ? limits?.upperMargin
        : book.wearMargin(plan);
  const margin = key === undefined ? undefined : book.figure(key);
  if (!margin) return false;
  const planned = plan.planned === undefined ? undefined : book.network.rows.get(plan.planned);
  const size = planned ? Math.abs(nominalOf(book, planned)) || 0 : 0;
  const noise = 1e-12 * Math.max(size, Math.abs(margin.value));
  const { centre, u, dof, low } = margin;
  switch (limits?.rule ?? book.settings.rule) {
    case 'worst-case':
      return low >= -noise;
    case 'iso14253-2013':
      return centre - expandedFactor(dof) * u >= -noise;
    case 'iso14253-2017':
      return centre - coverageFactor(dof, 0.9) * u >= -noise;
    default:
      return centre >= -noise;
  }
}

/**
 * An answer about a limit, put right by the verdict itself: near it the worst corners may be others than where the sheet
 * stands, no corner may be the worst, or draws may decide. Undefined where the limit is kept nowhere near it.
 */
export function settledByVerdict(
  trial: TrialSheet,
  question: Question,
  first: Solution,
): Solution | undefined {
  const { cell, field } = question.change;
  const record = trial.record(cell) as CellRecord;
  const holds = (one: Solution): boolean =>
    trial.with(
      withEntry(record, field, one.text),
      () => isKept(trial.computed(), trial.result(question.figure.cell), question),
      true,
    );
  let found = first;
  for (let turn = 0; turn < TURNS; turn++) {
    const again = trial.with(withEntry(record, field, found.text), () =>
      nearest(trial.computed(), question, found.value),
    );
    if (!again || again.text === found.text) break;
    found = again;
  }
  if (holds(found)) return found;
  const work = prepare(trial.computed(), question);
  if (typeof work === 'string' || found.value === undefined) return undefined;
  const at = found.value;
  const step = 1e-6 * Math.max(Math.abs(at), Math.abs(work.present ?? 0), 1e-6);
  const beside = work.distance(Float64Array.of(at - step, at + step), 2);
  const way = (beside[1] as number) >= (beside[0] as number) ? 1 : -1;
  let by = step;
  let steps = 0;
  while (steps++ < STEPS && !holds(written(work, at + way * by, true))) by *= 2;
  if (steps > STEPS) return undefined;
  let [out, kept] = [by === step ? 0 : by / 2, by];
  for (let k = 0; k < HALVINGS; k++) {
    const middle: number = (out + kept) / 2;
    if (holds(written(work, at + way * middle, true))) kept = middle;
    else out = middle;
  }
  return written(work, at + way * kept, true);
}

/** The answer by the rows as they stand with the last one in, that lies nearest to it. */
function nearest(book: Computed, question: Question, value = 0): Solution | undefined {
  const { solutions } = workBack(book, question);
  const off = (one: Solution): number => Math.abs((one.value ?? value) - value);
  return solutions.sort((a, b) => off(a) - off(b))[0];
}
