import { cautionTexts } from '../../cells/record/caution.ts';
import type { CellInput, CellKind } from '../../cells/record/cell.ts';
import type { Library } from '../engine/rows/library.ts';
import { EXIT, type Exit } from './exit.ts';
import type { Io } from './io.ts';
import { alignColumns } from './table.ts';

const indented = (rows: readonly (readonly string[])[]): string =>
  alignColumns(rows)
    .map((line) => `  ${line}\n`)
    .join('');

const whatItTakes = (input: CellInput): string => {
  if (input.record) return `a ${input.record} cell`;
  if (input.choice) return `a row of the table ${input.choice}`;
  return input.quantity ?? '';
};

const whenBlank = (input: CellInput): string => {
  if (input.default !== undefined) return `blank: ${input.default}`;
  return input.optional ? 'may stay blank' : 'must be given';
};

const kindText = (kind: CellKind): string => {
  const inputs = kind.inputs.map((input) => [input.name, whatItTakes(input), whenBlank(input), input.label]);
  const outputs = kind.outputs.map((output) => [output.name, output.quantity, output.label]);
  const cautions = cautionTexts(kind)
    .map((caution) => `  ${caution}\n`)
    .join('');
  return [
    `${kind.key}, edition ${kind.edition}: ${kind.title}\n${kind.purpose}\n`,
    `\nInputs\n${indented(inputs)}`,
    `\nOutputs\n${indented(outputs)}`,
    cautions === '' ? '' : `\nCautions\n${cautions}`,
  ].join('');
};

/** Lists the library, or one kind with its inputs and outputs. */
export const listCells = (wanted: string | undefined, library: Library, io: Io): Exit => {
  if (wanted === undefined) {
    const kinds = [...library.kinds.values()].sort(
      (a, b) => a.group.localeCompare(b.group) || a.key.localeCompare(b.key),
    );
    io.out(indented(kinds.map((kind) => [kind.group, kind.key, kind.purpose])));
    return EXIT.holds;
  }
  const kind = library.kinds.get(wanted);
  if (!kind) {
    io.err(`fitwright: there is no kind of cell "${wanted}": "fitwright cells" lists them.\n`);
    return EXIT.error;
  }
  io.out(kindText(kind));
  return EXIT.holds;
};
