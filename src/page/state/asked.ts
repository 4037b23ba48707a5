import type { CellInput } from '../../../cells/record/cell.ts';
import type { CellRecord, Limits } from '../../../shared/sheet/format.ts';
import type { Library } from '../../engine/rows/library.ts';
import type { CellResult } from '../../engine/rows/results.ts';
import { cellOfRow, inputRow, lineRow, outputRow, type RowKey } from './row-key.ts';

/** The author of the template left this input to be filled in. */
export const isLeftOpen = (record: CellRecord, input: CellInput): boolean =>
  record.examples?.[input.name] !== undefined;

/** A blank input that the template left to be filled in, or that the cell cannot do without. */
export const isWanting = (record: CellRecord, input: CellInput): boolean =>
  !record.inputs?.[input.name] &&
  (isLeftOpen(record, input) || (input.default === undefined && !input.optional));

const LIMITS = ['lower', 'upper', 'wear'] as const;

/** Limits that the template left to be filled in, and that are blank. */
export const wantedLimits = (limits: Limits | undefined): Array<(typeof LIMITS)[number]> =>
  limits ? LIMITS.filter((which) => limits[`${which}Example`] !== undefined && !limits[which]) : [];

/** Fields of a line that take such a limit, by the row of the grid they belong to. */
export const limitsWanted = (record: CellRecord): Array<{ row: RowKey; field: string }> => [
  ...wantedLimits(record.limits).map((which) => ({ row: lineRow(record.id), field: `limits.${which}` })),
  ...Object.entries(record.outputs ?? {}).flatMap(([output, { limits }]) =>
    wantedLimits(limits).map((which) => ({
      row: outputRow(record.id, output),
      field: `outputs.${output}.limits.${which}`,
    })),
  ),
];

/** A plain line with nothing in it. */
export const isBlankLine = (record: CellRecord): boolean =>
  record.role !== 'section' && record.role !== 'remark' && record.role !== 'cell' && !record.entry;

export interface EntriesAsked {
  /** Rows whose entry or limit the sheet cannot do without, in the order of its lines; a row once for each. */
  must: RowKey[];
  /** Inputs the template asks for where they are known; without them only the figures that need them stay away. */
  may: RowKey[];
}

/**
 * Blank entries of a sheet. Inputs of library cells are counted once the library is there.
 * @param waitedFor cells whose blank inputs keep figures of other cells waiting: there the optional ones are asked for too.
 */
export const entriesAsked = (
  records: Iterable<CellRecord>,
  library: Library | undefined,
  waitedFor: ReadonlySet<string>,
): EntriesAsked => {
  const must: RowKey[] = [];
  const may: RowKey[] = [];
  for (const record of records) {
    if (isBlankLine(record)) must.push(lineRow(record.id));
    must.push(...limitsWanted(record).map(({ row }) => row));
    if (record.role !== 'cell') continue;
    const inputs = library?.kinds.get(record.kind ?? '')?.inputs ?? [];
    const waited = waitedFor.has(record.id);
    const isLeft = inputs.some(
      (input) => input.choice !== undefined && isLeftOpen(record, input) && isWanting(record, input),
    );
    for (const input of inputs) {
      // A metal that nobody has chosen yet: its cell can do without, those that name it cannot. Of several choices the
      // template's come first: with them it may do without the others.
      const isChoice = waited && !isLeft && input.choice !== undefined && input.default === undefined;
      if (!isWanting(record, input) && !(isChoice && !record.inputs?.[input.name])) continue;
      const list = input.optional && !waited ? may : must;
      list.push(inputRow(record.id, input.name));
    }
  }
  return { must, may };
};

/** Cells that figures of other cells wait for because something in them is blank. */
export const waitedFor = (results: Iterable<CellResult>): Set<string> => {
  const found = new Set<string>();
  for (const { id, outputs } of results) {
    for (const { problem } of Object.values(outputs)) {
      if (problem?.kind === 'blank' && problem.originId && problem.originId !== id)
        found.add(problem.originId);
    }
  }
  return found;
};

/** The next row behind the present one in the order of the sheet. Of one cell they follow each other as in the list. */
export const nextBehind = (
  rows: readonly RowKey[],
  order: readonly string[],
  from: RowKey | undefined,
): RowKey | undefined => {
  const here = from === undefined ? -1 : rows.indexOf(from);
  // A row whose entry and limits are blank stands there for each of them.
  if (here >= 0) return rows.slice(here + 1).find((row) => row !== from);
  const at = from === undefined ? -1 : order.indexOf(cellOfRow(from));
  return rows.find((row) => order.indexOf(cellOfRow(row)) >= at);
};

/** The row to go to: the next behind the present one, else the first. */
export const nextAsked = (
  rows: readonly RowKey[],
  order: readonly string[],
  from: RowKey | undefined,
): RowKey | undefined => nextBehind(rows, order, from) ?? rows.find((row) => row !== from) ?? rows[0];
