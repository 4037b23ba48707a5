import { gradeOf } from '../../../shared/checks/states.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { nominalOf } from '../trial/path.ts';
import { type TrialSheet, withEntry } from '../trial/trial-sheet.ts';
import type { Movable } from './inputs.ts';
import { isKept } from './kept.ts';
import type { Answer, Question, Solution } from './question.ts';
import { wantedOf } from './wanted.ts';
import { figureName, planAt } from './work-back.ts';

/** Told of the rows of a table, the best first. */
const MOST = 12;

/** Works a figure back to a row of a table: each is tried by one edit, and those are told that do what is wanted, or come nearest. */
export function tryChoices(trial: TrialSheet, question: Question, input: Movable): Answer {
  const { cell, field } = question.change;
  const record = trial.record(cell) as CellRecord;
  const book = trial.computed();
  const plan = planAt(book, question.figure);
  const name = `\`${figureName(book, question.figure)}\``;
  const wanted = plan ? wantedOf(book, plan, question.want) : 'has no value.';
  if (typeof wanted === 'string') return { solutions: [], reason: `${name} ${wanted}` };
  const { rows = [], which } = input;
  const told = which === undefined ? {} : { tried: `Tried: ${which}, ${rows.length} of them.` };
  const isLimit = wanted.isLimit;
  const tried: { solution: Solution; off: number }[] = [];
  const before = nominalOf(book, wanted.figure);
  let moved = false;
  const looked = trial.each(
    rows.map(({ key }) => withEntry(record, field, key)),
    () => {
      const now = trial.computed();
      const at = planAt(now, question.figure);
      const target = at && wantedOf(now, at, question.want);
      if (!target || typeof target === 'string') return undefined;
      const figure = nominalOf(now, target.figure);
      const result = trial.result(question.figure.cell);
      if (isLimit) return { figure, kept: isKept(now, result, question), off: 0, result };
      const goal =
        question.want.at === 'value'
          ? question.want.value
          : figure - (marginOf(now, at?.limits?.lowerMargin) - marginOf(now, at?.limits?.upperMargin)) / 2;
      return { figure, kept: true, off: Math.abs(figure - goal), result };
    },
    isLimit,
  );
  rows.forEach((row, i) => {
    const found = looked[i];
    if (!found || Number.isNaN(found.figure)) return;
    if (found.figure !== before) moved = true;
    if (!found.kept) return;
    const grade = found.result?.outputs[question.figure.output]?.check.asNew.state;
    tried.push({
      solution: {
        text: row.key,
        name: row.name,
        figure: found.figure,
        fits: isLimit || (grade !== undefined && gradeOf(grade) !== 'out'),
      },
      off: isLimit ? Math.abs(found.figure - before) : found.off,
    });
  });
  if (!moved)
    return {
      solutions: [],
      reason: `\`${input.name}\` has no influence on ${name}: none of the ${rows.length} there are to choose moves it.`,
      ...told,
    };
  if (tried.length === 0)
    return {
      solutions: [],
      reason: `None of the ${rows.length} there are to choose for \`${input.name}\` keeps ${name} within that limit.`,
      ...told,
    };
  tried.sort((a, b) => a.off - b.off);
  const solutions = tried.slice(0, MOST).map(({ solution }) => solution);
  return { solutions, ...told };
}

const marginOf = (
  book: Parameters<typeof nominalOf>[0],
  key: Parameters<typeof book.network.rows.get>[0] | undefined,
): number => {
  const row = key === undefined ? undefined : book.network.rows.get(key);
  return row ? nominalOf(book, row) : Number.NaN;
};
