import type { Problem } from '../../../shared/problem.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { AssembledCell } from './assembled.ts';
import { CellBuilder } from './builder.ts';
import { faultProblem } from './fault.ts';
import { cellRow, outputRow } from './key.ts';
import type { Library } from './library.ts';

/** The program failed over the texts of one line. */
export class LineFault extends Error {
  override name = 'LineFault';
  constructor(
    readonly cell: string,
    cause: unknown,
  ) {
    super(cause instanceof Error ? cause.message : String(cause), { cause });
  }
}

/** What of a record nothing can fail over: its texts are left out. */
export const withoutTexts = ({ id, role, name, label, kind }: CellRecord): CellRecord => ({
  id,
  role,
  ...(name === undefined ? {} : { name }),
  ...(label === undefined ? {} : { label }),
  ...(kind === undefined ? {} : { kind }),
});

/** Outputs of a cell, by name. */
export const outputNames = ({ role, kind }: CellRecord, library: Library): string[] => {
  if (role === 'section' || role === 'remark') return [];
  return role === 'cell' ? (library.kinds.get(kind ?? '')?.outputs.map(({ name }) => name) ?? []) : ['value'];
};

/** A cell that is set aside for a fault of the program: it says so, and what depends on it waits. */
export const faultyCell = (record: CellRecord, library: Library, why: string): AssembledCell =>
  setAside(
    new CellBuilder(record.id, record.name ?? record.label ?? record.id),
    record,
    library,
    faultProblem(why),
  );

/** A cell none of whose outputs has a figure, for one and the same reason. */
export function setAside(
  build: CellBuilder,
  record: CellRecord,
  library: Library,
  what: Problem,
): AssembledCell {
  for (const name of outputNames(record, library)) {
    const planned = record.role === 'cell' ? outputRow(record.id, name) : cellRow(record.id);
    build.problem(planned, what);
    build.cell.outputs.push({ name, planned, stands: 'planned', justMade: false });
  }
  build.cell.problems.push({ ...what, origin: build.name, originId: record.id });
  if (record.name) build.cell.mentions.add(record.name);
  return build.cell;
}
