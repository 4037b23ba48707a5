import type { Network } from '../network/network.ts';
import type { OutputPlan } from '../rows/assembled.ts';
import { inputRow, type RowKey } from '../rows/key.ts';
import type { Figure } from '../rows/results.ts';
import type { SheetScope } from '../rows/scope.ts';
import type { Datum } from './datum.ts';
import { fitRange } from './fit-range.ts';
import { gaugeOfReading } from './gauge-range.ts';
import type { Pair } from './pairs.ts';
import { levelOf } from './reading-slips.ts';
import type { Register } from './register.ts';
import type { FitRange, SlipSheet } from './sheet.ts';
import { type Surface, surfaceOf, wordsOf } from './words.ts';
import { stepOf, written } from './written.ts';

/** The sheet as computed, as far as questions need it. */
export interface Standing {
  scope: SheetScope;
  network: Network;
  figure(key: RowKey): Figure | undefined;
  nominal(key: RowKey): number | undefined;
  /** Entry of the reference temperature. */
  reference: string;
  /** System of units the sheet is shown in. */
  system: 'in' | 'mm';
}

/** What questions are asked against, as it stands. */
export class SheetAsked implements SlipSheet {
  private readonly alikes = new Map<Datum, Datum[]>();

  constructor(
    protected readonly register: Register,
    protected readonly standing: Standing,
  ) {}

  figure(key: RowKey): Figure | undefined {
    return this.standing.figure(key);
  }

  nominal(key: RowKey): number | undefined {
    return this.standing.nominal(key);
  }

  limits(datum: Datum) {
    const plan = this.outputOf(datum);
    return { ...this.limitsOf(plan), metalOn: plan?.limits?.metalOn };
  }

  protected limitsOf(plan: OutputPlan | undefined) {
    const at = (key: RowKey | undefined) => (key === undefined ? undefined : this.figure(key)?.value);
    const limits = plan?.limits;
    return { lower: at(limits?.lower), upper: at(limits?.upper), wear: at(limits?.wear) };
  }

  protected outputOf(datum: Datum): OutputPlan | undefined {
    const outputs = this.register.sheaves.get(datum.cell)?.cell.outputs;
    return outputs?.find((one) => one.planned === datum.key || one.measured === datum.key);
  }

  rangeOf(pair: Pair, other: number): FitRange | undefined {
    const key = pair.output.planned as RowKey;
    const ratio = this.register.ratiosOf(key)[0];
    const across = ratio ? this.nominal(ratio.diameter) : undefined;
    const diameter = across ?? (pair.word === 'interference' ? other : undefined);
    return fitRange(pair, this.limitsOf(pair.output), diameter, this.nameOf(key));
  }

  alike(datum: Datum): number[] {
    return this.linesAlike(datum).map(levelOf);
  }

  private linesAlike(datum: Datum): Datum[] {
    let found = this.alikes.get(datum);
    if (!found) {
      found = this.register.alike(datum);
      this.alikes.set(datum, found);
    }
    return found;
  }

  beside(datum: Datum): Datum[] {
    const fits = this.register
      .pairsOf(datum.key)
      .map(({ from, taken }) => this.register.datum(from === datum.key ? taken : from));
    return [...this.linesAlike(datum), ...fits].flatMap((one) => (one?.read ? [one] : []));
  }

  copiedFrom(datum: Datum): string | undefined {
    const other = this.register.sameAs(datum)[0];
    return other && `\`${this.standing.scope.called(other.cell)}\``;
  }

  gaugeOf({ cell, field }: Datum) {
    const gauged = this.register.sheaves.get(cell)?.gauged.find((one) => one.field === field);
    return gauged && gaugeOfReading(gauged, this.standing);
  }

  words(datum: Datum): string {
    const record = this.standing.scope.records.get(datum.cell);
    const [head, name = ''] = datum.field.split('.');
    if (datum.key !== inputRow(datum.cell, name) && head === 'inputs') return wordsOf(record);
    if (head !== 'inputs' && head !== 'outputs') return wordsOf(record);
    const kind = record?.kind === undefined ? undefined : this.standing.scope.library.kinds.get(record.kind);
    const list = head === 'inputs' ? kind?.inputs : kind?.outputs;
    return wordsOf({ name }, list?.find((one) => one.name === name)?.label);
  }

  protected surface(datum: Datum): Surface | undefined {
    return this.surfaceOfRow(datum.key, surfaceOf(this.words(datum)), this.outputOf(datum)?.limits?.metalOn);
  }

  /** Hole or shaft by the words, by the differences it stands in, by the side on which metal is still on. */
  protected surfaceOfRow(
    key: RowKey,
    byWords: Surface | undefined,
    metalOn: 'low' | 'high' | undefined,
  ): Surface | undefined {
    if (byWords) return byWords;
    for (const pair of this.register.pairsOf(key)) {
      if (!pair.word) continue;
      return (pair.from === key) === (pair.word === 'clearance') ? 'hole' : 'shaft';
    }
    return metalOn === 'low' ? 'hole' : metalOn === 'high' ? 'shaft' : undefined;
  }

  size(si: number, datum: Datum): string {
    return written(si, datum);
  }

  step(datum: Datum): number {
    return stepOf(datum);
  }

  stepAt(key: RowKey): number {
    const datum = this.register.datum(key);
    return datum ? stepOf(datum) : 0;
  }

  nameOf(key: RowKey): string {
    const owner = this.standing.network.rows.get(key)?.owner;
    return owner === undefined ? 'the other part' : `\`${this.standing.scope.called(owner)}\``;
  }
}
