import type { CheckVerdict } from '../../../shared/checks/check.ts';
import type { GuardedEngine } from '../guarded-engine.ts';
import type { Library } from '../rows/library.ts';
import type { CellResult } from '../rows/results.ts';
import type { Sheet } from '../rows/whole-sheet.ts';
import { readQuestion, readWant, type Unread } from './asked.ts';
import { tryChoices } from './choices.ts';
import { inputAt } from './inputs.ts';
import { settledByVerdict } from './kept.ts';
import { offersFor } from './offers.ts';
import type {
  Answer,
  AskedQuestion,
  Consequence,
  FigurePlace,
  InputPlace,
  Offered,
  Question,
} from './question.ts';
import { steppedTo } from './steps.ts';
import { WhatIf, withEntry } from './what-if.ts';
import { prepare, workBack } from './work-back.ts';

/** Answers questions about a sheet: works back by the rows, and tries what it finds on a second engine. */
export class Desk {
  private readonly whatIf: WhatIf;

  /** @param engine of the sheet, which stays as it is */
  constructor(
    library: Library,
    private readonly engine: GuardedEngine,
  ) {
    this.whatIf = new WhatIf(library);
  }

  /** Inputs that move a figure to where it is wanted, the likeliest first; or why what is asked cannot be read. */
  offers(figure: FigurePlace, want: string): Offered[] | Unread {
    const book = this.engine.standing()?.book;
    if (!book) return [];
    const read = readWant(book, figure, want);
    return 'message' in read ? read : offersFor(book, figure, read);
  }

  workBack(asked: AskedQuestion): Answer {
    const standing = this.engine.standing();
    if (!standing) return { solutions: [], reason: 'The sheet could not be worked out.' };
    const { book, sheet } = standing;
    const question = readQuestion(book, asked);
    if ('message' in question) return { solutions: [], reason: question.message, isUnread: true };
    const input = inputAt(book, question.change);
    if ('stays' in input) return { solutions: [], reason: input.stays };
    if (input.isChoice) {
      this.whatIf.take(sheet);
      return tryChoices(this.whatIf, question, input);
    }
    const answer = this.settled(workBack(book, question), sheet, question);
    const { steps } = question;
    const work = steps && answer.solutions.length > 0 ? prepare(book, question) : undefined;
    if (!work || !steps || typeof work === 'string') return answer;
    return {
      ...answer,
      solutions: answer.solutions.map((one) => ({ ...one, made: steppedTo(work, one, steps) })),
    };
  }

  /** An answer about a limit as the verdict has it. */
  private settled(answer: Answer, sheet: Sheet, question: Question): Answer {
    if (answer.solutions.length === 0 || question.want.at === 'value' || question.want.at === 'middle')
      return answer;
    this.whatIf.take(sheet);
    const solutions = answer.solutions.flatMap((one) => settledByVerdict(this.whatIf, question, one) ?? []);
    if (solutions.length > 0) return { ...answer, solutions };
    return { ...answer, solutions, reason: 'Near the size worked out the limit is not surely kept.' };
  }

  /** What the checks of the sheet say once an entry is taken in: those that then say something else. */
  consequences({ cell, field }: InputPlace, text: string): Consequence[] {
    const standing = this.engine.standing();
    if (!standing) return [];
    this.whatIf.take(standing.sheet);
    const record = this.whatIf.recordOf(cell);
    if (!record) return [];
    this.whatIf.settle();
    const before = (id: string) => this.whatIf.resultOf(id);
    return this.whatIf.trial(withEntry(record, field, text), (_, changed) => turned(changed, before), true);
  }

  destroy(): void {
    this.whatIf.destroy();
  }
}

/** The checks that say something else than before. */
function turned(
  changed: ReadonlyMap<string, CellResult>,
  before: (id: string) => CellResult | undefined,
): Consequence[] {
  const found: Consequence[] = [];
  for (const [cell, { outputs }] of changed)
    for (const [output, { check }] of Object.entries(outputs)) {
      const was = before(cell)?.outputs[output]?.check;
      if (was && saysOther(was, check)) found.push({ cell, output, before: was, after: check });
    }
  return found;
}

const saysOther = (a: CheckVerdict, b: CheckVerdict): boolean =>
  a.asNew.state !== b.asNew.state || a.inService?.state !== b.inService?.state;
