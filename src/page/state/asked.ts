import type { CellInput } from '../../../cells/cell.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Library } from '../../engine/library.ts';
import { inputRow, type RowKey } from './cursor.ts';

/** The author of the template left this input to be filled in. */
export const isLeftOpen = (record: CellRecord, input: CellInput): boolean =>
  record.examples?.[input.name] !== undefined;

/** A blank input that the template left to be filled in, or that the cell cannot do without. */
export const isWanting = (record: CellRecord, input: CellInput): boolean =>
  !record.inputs?.[input.name] &&
  (isLeftOpen(record, input) || (input.default === undefined && !input.optional));

/** A plain line with nothing in it. */
export const isBlankLine = (record: CellRecord): boolean =>
  record.role !== 'section' && record.role !== 'remark' && record.role !== 'cell' && !record.entry;

export interface EntriesAsked {
  /** Rows whose entry the sheet cannot do without, in the order of its lines. */
  must: RowKey[];
  /** Inputs the template asks for where they are known; without them the sheet is worked out all the same. */
  may: RowKey[];
}

/** Blank entries of a sheet. Inputs of library cells are counted once the library is there. */
export const entriesAsked = (records: Iterable<CellRecord>, library: Library | undefined): EntriesAsked => {
  const must: RowKey[] = [];
  const may: RowKey[] = [];
  for (const record of records) {
    if (isBlankLine(record)) must.push(record.id);
    if (record.role !== 'cell') continue;
    for (const input of library?.kinds.get(record.kind ?? '')?.inputs ?? []) {
      if (isWanting(record, input)) (input.optional ? may : must).push(inputRow(record.id, input.name));
    }
  }
  return { must, may };
};
