import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Computed } from '../computed.ts';
import type { RowKey } from '../rows/key.ts';
import { type CheckBelow, checksBelow, isJudged, type Stood, stoodOf } from '../trial/checks.ts';
import type { FigurePlace, InputPlace } from '../trial/place.ts';
import { type TrialSheet, withEntry } from '../trial/trial-sheet.ts';
import { readQuestion, readWant } from './asked.ts';
import { tryChoices } from './choices.ts';
import { inputAt } from './inputs.ts';
import { settledByVerdict } from './kept.ts';
import { offersFor } from './offers.ts';
import type { Answer, AskedQuestion, Consequences, Offers, Question, Solution } from './question.ts';
import { steppedTo } from './steps.ts';
import { prepare, workBack } from './work-back.ts';

/** Answers questions about a sheet: works back by its rows, and tries what it finds. The trial sheet is left as it was. */
export class Desk {
  constructor(private readonly trial: TrialSheet) {}

  /** Inputs that move a figure to where it is wanted, the likeliest first; or why there are none. */
  offers(figure: FigurePlace, want: string): Offers {
    const book = this.trial.computed();
    const read = readWant(book, figure, want);
    if ('message' in read) return { inputs: [], reason: read.message, isUnread: true };
    return offersFor(book, figure, read);
  }

  /** The answers, each with what every check then says. */
  answer(asked: AskedQuestion): Answer {
    const answer = this.workBack(asked);
    const told = (one: Solution): Solution => ({
      ...one,
      checks: this.consequences(asked.change, one.text),
      ...(one.made ? { made: one.made.map(told) } : {}),
    });
    return { ...answer, solutions: answer.solutions.map(told) };
  }

  workBack(asked: AskedQuestion): Answer {
    const { trial } = this;
    const book = trial.computed();
    const question = readQuestion(book, asked);
    if ('message' in question) return { solutions: [], reason: question.message, isUnread: true };
    const input = inputAt(book, question.change);
    if ('stays' in input) return { solutions: [], reason: input.stays };
    if (input.isChoice) return tryChoices(trial, question, input);
    const answer = this.settled(workBack(book, question), question);
    const { steps } = question;
    const work = steps && answer.solutions.length > 0 ? prepare(book, question) : undefined;
    if (!work || !steps || typeof work === 'string') return answer;
    return {
      ...answer,
      solutions: answer.solutions.map((one) => ({ ...one, made: steppedTo(work, one, steps) })),
    };
  }

  /** An answer about a limit as the verdict has it. */
  private settled(answer: Answer, question: Question): Answer {
    if (answer.solutions.length === 0 || question.want.at === 'value' || question.want.at === 'middle')
      return answer;
    const solutions = answer.solutions.flatMap((one) => settledByVerdict(this.trial, question, one) ?? []);
    if (solutions.length > 0) return { ...answer, solutions };
    return { ...answer, solutions, reason: 'Near the size worked out the limit is not surely kept.' };
  }

  /** What every check below a line says once an entry of it is taken in. */
  consequences({ cell, field }: InputPlace, text: string): Consequences {
    const { trial } = this;
    const record = trial.record(cell);
    if (!record) return { turned: [], failing: [], same: 0 };
    trial.settle();
    const before = this.stood(record);
    const after = trial.with(withEntry(record, field, text), () => this.stood(record), true);
    const found: Consequences = { turned: [], failing: [], same: 0 };
    for (const [name, { check, stood }] of after) {
      const was = before.get(name)?.stood ?? NOTHING;
      const { words } = stood;
      if (was.holds !== stood.holds || was.words !== words)
        found.turned.push({ ...named(check), before: was, after: stood });
      else {
        found.same++;
        if (!stood.holds) found.failing.push({ ...named(check), words });
      }
    }
    return found;
  }

  /** How the checks below a line stand, by name. */
  private stood({ id }: CellRecord): Map<string, { check: CheckBelow; stood: Stood }> {
    const { trial } = this;
    const book = trial.computed();
    const order = trial.sheet.cells.map((one) => one.id);
    const found = new Map<string, { check: CheckBelow; stood: Stood }>();
    for (const check of checksBelow(book, keysOf(book, id), order, trial.sheet.rule)) {
      const result = trial.result(check.cell);
      if (isJudged(check, result)) found.set(nameOf(check), { check, stood: stoodOf(check, result) });
    }
    return found;
  }
}

/** What is said of a check that is not judged. */
const NOTHING: Stood = { holds: true, waits: false, words: '' };

const keysOf = (book: Computed, cell: string): RowKey[] =>
  (book.cells.get(cell)?.rows ?? []).map(({ key }) => key);

const named = ({ cell, output, as }: CheckBelow) => ({ cell, output, as });
const nameOf = ({ cell, output, as, otherwise = '' }: CheckBelow): string =>
  [cell, output, as, otherwise].join('\n');
