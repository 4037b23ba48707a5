import type { CellInput } from '../../../cells/record/cell.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { type Choice, type ChoiceFrom, choiceOf, nameTaken } from './choices.ts';
import { classTaken } from './class-taken.ts';
import type { Library } from './library.ts';
import type { Texts } from './texts.ts';

/** Plain lines that do no more than name another are followed so far: they may stand in a ring. */
const FAR = 20;

/** The choices of one sheet. */
export class SheetChoices {
  private readonly from: ChoiceFrom;

  constructor(
    library: Library,
    private readonly texts: Texts,
    records: ReadonlyMap<string, CellRecord>,
    private readonly named: (name: string) => CellRecord | undefined,
  ) {
    this.from = {
      library,
      named,
      designated: (record) => this.designated(record),
      all: () => records.values(),
    };
  }

  /** What a choice of a library cell stands for, its own or one taken from another line. */
  of(record: CellRecord, input: CellInput): Choice {
    return choiceOf(record, input, this.from);
  }

  /** The class that a line takes from another as its tolerance. */
  classOf(record: CellRecord): Choice | undefined {
    return classTaken(record, this.from);
  }

  /** The tolerance of a line as it reads, a class taken from another line in its place. */
  toleranceOf(record: CellRecord): string {
    const taken = this.classOf(record);
    return taken && 'text' in taken ? taken.text : (record.tolerance?.trim() ?? '');
  }

  /** Name of the line that a text takes its choice from. */
  nameTaken(text: string): string | undefined {
    return nameTaken(text, this.named);
  }

  /** What a plain line names of a table (`M10`, `3/8-16 UNC`), or the one that it is no more than a name of. */
  designated(record: CellRecord, far = FAR): { table: string; text: string } | undefined {
    if (record.role === 'cell' || !record.entry || far === 0) return undefined;
    const { entry } = this.texts.entry(record.entry, record.quantity, record.role, record.display);
    if (entry.kind === 'designation') return { table: entry.table, text: entry.key };
    if (entry.kind !== 'formula' || entry.expr.kind !== 'ref' || entry.expr.output !== undefined)
      return undefined;
    const next = this.named(entry.expr.name);
    return next && this.designated(next, far - 1);
  }
}
