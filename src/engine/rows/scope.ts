import type { CellInput } from '../../../cells/record/cell.ts';
import { type Problem, problem } from '../../../shared/problem.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Reference, ValueType } from '../../language/syntax/syntax.ts';
import { rowRef } from './expr.ts';
import { atEnd, type End, type Led } from './fit-ends.ts';
import { hasForm } from './form.ts';
import {
  cellRow,
  inputRow,
  outputRow,
  partRow,
  READING_FIGURES,
  type ReadingFigure,
  type RowKey,
} from './key.ts';
import type { Library } from './library.ts';
import { LineTypes } from './line-types.ts';
import { nearName } from './near-name.ts';
import { recordTaken } from './records-taken.ts';
import { SheetChoices } from './sheet-choices.ts';
import { numberOf, type Texts } from './texts.ts';
import { typeOfQuantity } from './type-of-quantity.ts';

/** Where a reference leads: the row that holds it, and what it is. */
export interface Target {
  key: RowKey;
  type: ValueType;
  cell: string;
  /** Of a choice: the text it stands for. The engine holds no texts, so there is no row for it; blank where nothing is chosen. */
  choice?: string;
}

const TEXT: ValueType = { kind: 'text' };

/** Figures a set of readings has besides its mean. A plain value answers to the first three with itself. */
const isReadingFigure = (name: string): name is ReadingFigure =>
  (READING_FIGURES as readonly string[]).includes(name);
const OF_A_VALUE = new Set(['mean', 'least', 'greatest']);

/** Names of a sheet and what they lead to. Holds no results; asked while cells are assembled. */
export class SheetScope {
  readonly records = new Map<string, CellRecord>();
  private names = new Map<string, string[]>();
  private readonly types: LineTypes;
  /** How far an input that names an input that names ... has been followed: they may stand in a ring. */
  private aliasDepth = 0;
  readonly choices: SheetChoices;

  constructor(
    readonly library: Library,
    readonly texts: Texts,
    /** As-measured values stand in for planned ones. */
    readonly measured: boolean,
  ) {
    this.choices = new SheetChoices(library, texts, this.records, (name) => this.recordOf(name));
    this.types = new LineTypes(
      library,
      texts,
      this.records,
      (name) => this.idOf(name),
      (ref) => this.typeOf(ref),
    );
  }

  /** Forgets the types after records have changed; makes the list of names anew where some came, went or changed theirs. */
  refresh(renamed: boolean): void {
    this.types.forget();
    if (!renamed) return;
    this.names = new Map();
    for (const record of this.records.values()) {
      if (!record.name) continue;
      const list = this.names.get(record.name);
      if (list) list.push(record.id);
      else this.names.set(record.name, [record.id]);
    }
  }

  /** Of several cells of one name the one with the lowest id, whatever order they came in. */
  idOf(name: string): string | undefined {
    return this.names.get(name)?.toSorted()[0];
  }

  private recordOf(name: string): CellRecord | undefined {
    const id = this.idOf(name);
    return id === undefined ? undefined : this.records.get(id);
  }

  /** The line of a kind that a text names, itself or by what another line names. */
  recordTaken(text: string, kind: string): ReturnType<typeof recordTaken> {
    return recordTaken(text, kind, { library: this.library, named: (name) => this.recordOf(name) });
  }

  /** Every name of the sheet that can be referred to. */
  allNames(): string[] {
    return [...this.names.keys()];
  }

  /** True for the second and later cells of one name. */
  isDuplicate(record: CellRecord): boolean {
    return record.name !== undefined && this.idOf(record.name) !== record.id;
  }

  /** What a person calls the cell. */
  called(id: string): string {
    const record = this.records.get(id);
    return record?.name ?? record?.label ?? id;
  }

  /** As-measured stands in for the plan of this output. */
  isMeasured(record: CellRecord, output: string): boolean {
    if (!this.measured) return false;
    // A reading is no plan: there is nothing its own value could stand in for.
    if (record.role === 'measured') return false;
    const measured = record.role === 'cell' ? record.outputs?.[output]?.measured : record.measured;
    return measured !== undefined && measured.entry.trim() !== '';
  }

  /** Key of the row that stands for an output: measured before planned. */
  standing(record: CellRecord, output: string): RowKey {
    const plan = record.role === 'cell' ? outputRow(record.id, output) : cellRow(record.id);
    return this.isMeasured(record, output) ? partRow(plan, 'measured') : plan;
  }

  hasReadings(record: CellRecord): boolean {
    const text = this.isMeasured(record, 'value')
      ? record.measured?.entry
      : record.role === 'measured'
        ? record.entry
        : undefined;
    if (text === undefined || text.trim() === '') return false;
    const { entry } = this.texts.entry(text, record.quantity, 'measured');
    return entry.kind === 'readings' || numberOf(entry) !== undefined;
  }

  /** Read more than once, so that it has a form. */
  private isList(text: string | undefined, quantity: string | undefined): boolean {
    if (!text?.trim()) return false;
    return hasForm(this.texts.entry(text, quantity, 'measured').entry);
  }

  /** Where a reference leads at the least or the greatest. */
  readonly endOf = (ref: Reference, end: End): Led | undefined => {
    const key = this.endKey(ref, end);
    if (key !== undefined) return { to: rowRef(key), isEnd: true };
    const target = this.resolve(ref);
    return 'message' in target ? undefined : { to: rowRef(target.key), isEnd: false };
  };

  private endKey(ref: Reference, end: End): RowKey | undefined {
    const record = this.recordOf(ref.name);
    if (!record || this.aliasDepth >= 20) return undefined;
    if (record.role === 'cell') {
      const output = ref.output ?? '';
      const settings = record.outputs?.[output];
      if (!this.isMeasured(record, output)) return undefined;
      if (!this.isList(settings?.measured?.entry, this.quantityOf(record, output))) return undefined;
      return partRow(this.standing(record, output), end);
    }
    if (ref.output !== undefined && ref.output !== 'value') return undefined;
    return this.hasEnds(record) ? partRow(this.standing(record, 'value'), end) : undefined;
  }

  /** A plain cell that has a least and a greatest: by its readings, or by those of the parts it is worked out from. */
  hasEnds(record: CellRecord): boolean {
    if (this.isMeasured(record, 'value')) return this.isList(record.measured?.entry, record.quantity);
    if (record.role === 'measured') return this.isList(record.entry, record.quantity);
    if (record.role !== 'worked' || record.issued?.trim()) return false;
    const { entry } = this.texts.entry(record.entry ?? '', record.quantity, record.role);
    if (entry.kind !== 'formula' || entry.spread) return false;
    this.aliasDepth++;
    try {
      return atEnd(entry.expr, 'least', this.endOf) !== undefined;
    } finally {
      this.aliasDepth--;
    }
  }

  /** Outputs of a library cell that were measured with readings, so that they have a least and a greatest. */
  readOutputs(record: CellRecord): string[] {
    return Object.keys(record.outputs ?? {}).filter((output) => this.isRead(record, output));
  }

  private isRead(record: CellRecord, output: string): boolean {
    if (!this.isMeasured(record, output)) return false;
    const text = record.outputs?.[output]?.measured?.entry ?? '';
    const { entry } = this.texts.entry(text, this.quantityOf(record, output), 'measured');
    return entry.kind === 'readings' || numberOf(entry) !== undefined;
  }

  /** Row of the least, the greatest ... of an output that was measured with several readings; the output itself otherwise. */
  readingOf(name: string, output: string, figure: string): RowKey | undefined {
    const record = this.recordOf(name);
    if (!record || !this.isRead(record, output)) return undefined;
    const mean = this.standing(record, output);
    if (figure === 'mean') return mean;
    return isReadingFigure(figure) ? partRow(mean, figure) : undefined;
  }

  /** What the reading that a reference leads to is known to; undefined where it leads to none. */
  doubtOf(ref: Reference): RowKey | undefined {
    const target = this.resolve(ref);
    const record = 'message' in target ? undefined : this.records.get(target.cell);
    if (!record || 'message' in target) return undefined;
    const isRead =
      record.role === 'cell'
        ? this.readOutputs(record).some((output) => this.standing(record, output) === target.key)
        : target.key === this.standing(record, 'value') && this.hasReadings(record);
    return isRead ? partRow(target.key, 'doubt') : undefined;
  }

  private quantityOf(record: CellRecord, output: string): string | undefined {
    const kind = record.kind === undefined ? undefined : this.library.kinds.get(record.kind);
    return kind?.outputs.find((one) => one.name === output)?.quantity;
  }

  resolve(ref: Reference): Target | Problem {
    const record = this.recordOf(ref.name);
    const several = this.names.get(ref.name)?.length ?? 0;
    if (several > 1)
      return problem(
        'unknown-name',
        `${several} cells are called \`${ref.name}\`: which is meant? Rename all of them but one.`,
        { from: ref.from, to: ref.to },
      );
    if (!record)
      return problem(
        'unknown-name',
        `There is no cell named \`${ref.name}\`.${nearName(ref.name, this.allNames())}`,
        {
          from: ref.from,
          to: ref.to,
        },
      );
    return this.outputOf(record, ref);
  }

  outputOf(record: CellRecord, ref: { output?: string; from: number; to: number }): Target | Problem {
    const span = { from: ref.from, to: ref.to };
    const called = this.called(record.id);
    if (record.role === 'section' || record.role === 'remark')
      return problem('unknown-name', `\`${called}\` is a heading or a remark: it has no value.`, span);
    if (record.role !== 'cell') {
      const type = this.typeOfPlain(record);
      if ('message' in type) return { key: cellRow(record.id), type: { kind: 'quantity' }, cell: record.id };
      const output = ref.output ?? 'value';
      const base = this.standing(record, 'value');
      if (output === 'value' || output === 'mean') return { key: base, type, cell: record.id };
      if (!isReadingFigure(output))
        return problem(
          'unknown-name',
          `\`${called}\` has no \`${output}\`: a plain cell has mean, least, greatest, out_of_round and taper.`,
          span,
        );
      if (
        this.hasReadings(record) ||
        (record.role === 'worked' && OF_A_VALUE.has(output) && this.hasEnds(record))
      )
        return { key: partRow(base, output), type, cell: record.id };
      if (OF_A_VALUE.has(output)) return { key: base, type, cell: record.id };
      return problem('blank', `\`${called}\` has no readings, so no ${output.replaceAll('_', ' ')}.`, span);
    }
    const kind = record.kind === undefined ? undefined : this.library.kinds.get(record.kind);
    if (!kind)
      return problem(
        'unknown-key',
        record.kind !== undefined && this.library.lacks?.(record.kind)
          ? `\`${called}\` waits for its kind (${record.kind}), which could not be fetched.`
          : `\`${called}\` is of a kind this library does not have (${record.kind ?? 'none'}).`,
        span,
      );
    if (ref.output === undefined) {
      const faces = kind.outputs.filter((output) => output.face);
      const only = kind.outputs.length === 1 ? kind.outputs[0] : faces.length === 1 ? faces[0] : undefined;
      if (!only) {
        const list = (faces.length > 0 ? faces : kind.outputs)
          .map((output) => `\`${called}.${output.name}\``)
          .join(', ');
        return problem(
          'unknown-name',
          `\`${called}\` has more than one figure: say which, such as ${list}.`,
          span,
        );
      }
      return { key: this.standing(record, only.name), type: typeOfQuantity(only.quantity), cell: record.id };
    }
    const output = kind.outputs.find((one) => one.name === ref.output);
    if (output)
      return {
        key: this.standing(record, output.name),
        type: typeOfQuantity(output.quantity),
        cell: record.id,
      };
    const input = kind.inputs.find((one) => one.name === ref.output && one.quantity !== undefined);
    if (input) return this.inputOf(record, input.name, typeOfQuantity(input.quantity as string));
    const choice = kind.inputs.find((one) => one.name === ref.output && one.choice !== undefined);
    if (choice) return this.choiceTarget(record, choice);
    const list = kind.outputs.map((one) => one.name).join(', ');
    return problem(
      'unknown-name',
      `\`${called}\` (${kind.title}) has no figure \`${ref.output}\`. It has: ${list}.`,
      span,
    );
  }

  private choiceTarget(record: CellRecord, input: CellInput): Target {
    const found = this.choices.of(record, input);
    const target = { key: inputRow(record.id, input.name), type: TEXT, cell: record.id };
    return 'text' in found ? { ...target, choice: found.text } : target;
  }

  /** An input of a library cell: a row, or the cell its entry names. */
  private inputOf(record: CellRecord, name: string, type: ValueType): Target | Problem {
    const text = record.inputs?.[name]?.trim().replace(/^=\s*/, '') ?? '';
    const [cell, output] = text.split('.');
    if (
      cell &&
      this.aliasDepth < 20 &&
      this.idOf(cell) !== undefined &&
      /^[\p{L}_][\p{L}\p{N}_.]*$/u.test(text)
    )
      return this.deeper({ kind: 'ref', name: cell, ...(output ? { output } : {}), from: 0, to: 0 });
    return { key: inputRow(record.id, name), type, cell: record.id };
  }

  /** Where a reference to an input of a library cell leads, by input: to the cell its entry names, where it names one. */
  aliasesOf(record: CellRecord): [name: string, leadsTo: string][] {
    const kind = record.kind === undefined ? undefined : this.library.kinds.get(record.kind);
    return (kind?.inputs ?? []).flatMap((input): [string, string][] => {
      const { name, quantity } = input;
      if (input.choice !== undefined) {
        const found = this.choices.of(record, input);
        return [[name, 'text' in found ? found.text : 'problem' in found ? found.problem.message : '']];
      }
      const text = record.inputs?.[name]?.trim();
      if (input.record !== undefined && text) {
        const found = this.recordTaken(text, input.record);
        return [
          [name, 'record' in found ? found.record.id : JSON.stringify(found.through.map(({ id }) => id))],
        ];
      }
      if (quantity === undefined || !text) return [];
      const target = this.inputOf(record, name, typeOfQuantity(quantity));
      return [[name, 'message' in target ? target.message : `${target.key} ${JSON.stringify(target.type)}`]];
    });
  }

  private deeper(ref: Reference): Target | Problem {
    this.aliasDepth++;
    try {
      return this.resolve(ref);
    } finally {
      this.aliasDepth--;
    }
  }

  /** Type of a plain cell; unknown while it is blank or a ring leaves it open. */
  typeOfPlain(record: CellRecord): ValueType | Problem {
    return this.types.of(record);
  }

  typeOf(ref: Reference): ValueType | Problem {
    const target = this.resolve(ref);
    return 'message' in target ? target : target.type;
  }
}
