import type { CellKind } from '../../cells/record/cell.ts';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import type { Assignment } from './arguments.ts';

export interface Overridden {
  file: SheetFile;
  /** What cannot be done, each with what to do instead. */
  faults: string[];
  /** What was done and may surprise. */
  notices: string[];
}

type Kinds = ReadonlyMap<string, CellKind>;
/** The changed cell, or what is wrong with the assignment. */
type Change = (cell: CellRecord, assignment: Assignment, kinds: Kinds) => CellRecord | string;

const list = (names: readonly string[]): string => names.join(', ') || 'none';

const called = ({ name, part }: Assignment): string => (part === undefined ? name : `${name}.${part}`);

const setEntry: Change = (cell, assignment, kinds) => {
  const { part, entry } = assignment;
  if (cell.role !== 'cell') {
    if (part === undefined) return { ...cell, entry };
    return `"${cell.name}" is a plain cell and has no input "${part}": write --set ${cell.name}="...".`;
  }
  const kind = kinds.get(cell.kind ?? '');
  const inputs = kind?.inputs.map((input) => input.name) ?? Object.keys(cell.inputs ?? {});
  if (part === undefined)
    return `"${cell.name}" is a library cell: name one of its inputs (${list(inputs)}).`;
  if (!inputs.includes(part)) return `"${cell.name}" has no input "${part}". It has: ${list(inputs)}.`;
  return { ...cell, inputs: { ...cell.inputs, [part]: entry } };
};

const setMeasured: Change = (cell, assignment, kinds) => {
  const { part, entry } = assignment;
  if (cell.role === 'measured')
    return `"${cell.name}" is a measured cell: its reading is its entry, so write --set ${cell.name}="...".`;
  if (cell.role !== 'cell') {
    if (part !== undefined) return `"${cell.name}" is a plain cell: write --measured ${cell.name}="...".`;
    return { ...cell, measured: { ...cell.measured, entry } };
  }
  const kind = kinds.get(cell.kind ?? '');
  const outputs = kind?.outputs.map((output) => output.name) ?? Object.keys(cell.outputs ?? {});
  if (part === undefined)
    return `"${cell.name}" is a library cell: name one of its outputs (${list(outputs)}).`;
  if (!outputs.includes(part)) return `"${cell.name}" has no output "${part}". It has: ${list(outputs)}.`;
  const before = cell.outputs?.[part];
  return {
    ...cell,
    outputs: { ...cell.outputs, [part]: { ...before, measured: { ...before?.measured, entry } } },
  };
};

const shadowed = (cell: CellRecord): string | undefined => {
  if (cell.role === 'cell') return undefined;
  if (cell.measured?.entry.trim())
    return `"${cell.name}" has been measured, and the measured value stands: the new entry changes its plan only.`;
  if (cell.issued?.trim())
    return `"${cell.name}" has been released to cut, and the released size stands: the new entry changes only what it would now be.`;
  return undefined;
};

/** The sheet with entries replaced (`--set`) and as-measured values put in (`--measured`). */
export const override = (
  file: SheetFile,
  set: readonly Assignment[],
  measured: readonly Assignment[],
  kinds: Kinds,
): Overridden => {
  const cells = [...file.cells];
  const faults: string[] = [];
  const notices: string[] = [];
  const names = cells.flatMap(({ name, role }) =>
    name && role !== 'section' && role !== 'remark' ? [name] : [],
  );

  const put = (option: string, assignment: Assignment, change: Change): void => {
    const at = cells.findIndex(
      ({ name, role }) =>
        name?.normalize('NFC') === assignment.name && role !== 'section' && role !== 'remark',
    );
    const cell = cells[at];
    if (!cell) {
      faults.push(
        `${option} ${called(assignment)}: the sheet has no cell of that name. It has: ${list(names)}.`,
      );
      return;
    }
    const changed = change(cell, assignment, kinds);
    if (typeof changed === 'string') {
      faults.push(`${option} ${called(assignment)}: ${changed}`);
      return;
    }
    cells[at] = changed;
    const notice = option === '--set' ? shadowed(cell) : undefined;
    if (notice) notices.push(notice);
  };
  for (const one of set) put('--set', one, setEntry);
  for (const one of measured) put('--measured', one, setMeasured);
  return { file: { ...file, cells }, faults, notices };
};
