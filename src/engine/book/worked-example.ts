/**
 * A worked example of a library cell, put on a sheet of its own and computed. Nothing in it is looked up from the
 * record: what the book shows beside an expected figure is what the engine gives now.
 */
import type { CellKind, WorkedExample } from '../../../cells/record/cell.ts';
import type { CellRecord, SheetFile, SheetUnits } from '../../../shared/sheet/format.ts';
import { computeSheet } from '../compute.ts';
import type { Library } from '../rows/library.ts';
import type { CellResult, Figure } from '../rows/results.ts';
import { type ExampleEntries, libraryFor, putIn, withInputs } from './example-library.ts';

/** One figure the example expects, and what came out. SI. */
export interface ExpectedFigure {
  output: string;
  /** As printed in the example's source. */
  text: string;
  expected: number;
  /** How near it must be. */
  within: number;
  got: number | undefined;
  holds: boolean;
}

/** A figure that stands for a name of the cell's formulas: `size`, `press.pressure`. */
interface NamedFigure {
  quantity: string;
  figure: Figure;
}

export interface WorkedOut {
  units: SheetUnits;
  result: CellResult;
  /** Figures of inputs and of what records give, by the name formulas use. */
  given: Readonly<Record<string, NamedFigure>>;
  expected: readonly ExpectedFigure[];
}

const INCH = /["″]|\d\s*(in|thou|tenth_in|ft|psi|ksi|Mpsi|lbf|kip|degF|hp|F)\b/;

/** Inches where the example is given in them. */
export const unitsOfExample = (entries: ExampleEntries): SheetUnits => {
  const texts = Object.values(entries).flatMap((entry) =>
    typeof entry === 'string' ? [entry] : Object.values(entry),
  );
  return { length: texts.some((text) => INCH.test(text)) ? 'in' : 'mm' };
};

const IT = 'it';

/** Cells of the records an example describes by their outputs, and the cell itself, named `it`. */
export const exampleCells = (kind: CellKind, entries: ExampleEntries): Omit<CellRecord, 'id'>[] => {
  const cells: Omit<CellRecord, 'id'>[] = [];
  const inputs: Record<string, string> = {};
  for (const [name, entry] of Object.entries(entries)) {
    if (typeof entry === 'string') {
      inputs[name] = entry;
      continue;
    }
    const record = kind.inputs.find((input) => input.name === name)?.record;
    if (record === undefined) throw new TypeError(`${kind.key}.${name} takes no record`);
    inputs[name] = `of_${name}`;
    cells.push({ role: 'cell', kind: record, name: `of_${name}`, inputs: putIn(entry) });
  }
  return [...cells, { role: 'cell', kind: kind.key, edition: kind.edition, name: IT, inputs }];
};

const given = (name: string, quantity: string, entry: string): Omit<CellRecord, 'id'> => ({
  role: 'given',
  name,
  quantity,
  entry,
});

/** The figures expected, as cells, so that they are read the way every entry is. */
const expectedCells = (kind: CellKind, example: WorkedExample): Omit<CellRecord, 'id'>[] =>
  Object.entries(example.expect).flatMap(([name, { value, within }]) => {
    const quantity = kind.outputs.find((output) => output.name === name)?.quantity ?? 'number';
    const step = quantity === 'temperature' ? 'temperature difference' : quantity;
    const near = typeof within === 'string' ? [given(`near_${name}`, step, within)] : [];
    return [given(`expected_${name}`, quantity, value), ...near];
  });

const sheetFile = (units: SheetUnits, cells: readonly Omit<CellRecord, 'id'>[]): SheetFile => ({
  format: 'fitwright-sheet',
  version: 1,
  title: { title: 'Worked example' },
  units,
  rule: 'worst-case',
  cells: cells.map((cell, i) => ({ id: `c${i}`, ...cell })),
});

/** Computes a worked example through the engine. */
export const workOut = (library: Library, kind: CellKind, example: WorkedExample): WorkedOut => {
  const units = unitsOfExample(example.inputs);
  const shown = withInputs(kind);
  const sheet = computeSheet(
    sheetFile(units, [...exampleCells(kind, example.inputs), ...expectedCells(kind, example)]),
    libraryFor(library, shown.kind, example.inputs),
  );
  const planned = (name: string): number | undefined => sheet.byName(name)?.outputs.value?.planned?.value;
  const found = sheet.byName(IT);
  if (!found) throw new TypeError(`${kind.key}: the example was not computed`);
  const outputs = { ...found.outputs };
  const figures: Record<string, NamedFigure> = {};
  for (const input of kind.inputs) {
    const alias = shown.outputOf.get(input.name);
    const figure = alias && outputs[alias]?.planned;
    if (alias) delete outputs[alias];
    if (figure && input.quantity) figures[input.name] = { quantity: input.quantity, figure };
    if (!input.record) continue;
    for (const [name, output] of Object.entries(sheet.byName(`of_${input.name}`)?.outputs ?? {}))
      if (output.planned && output.quantity)
        figures[`${input.name}.${name}`] = { quantity: output.quantity, figure: output.planned };
  }
  const expected = Object.entries(example.expect).map(([output, { value, within }]): ExpectedFigure => {
    const wanted = planned(`expected_${output}`);
    const near = typeof within === 'number' ? Math.abs(wanted ?? 0) * within : planned(`near_${output}`);
    const got = outputs[output]?.planned?.value;
    if (wanted === undefined || near === undefined)
      throw new TypeError(`${kind.key}: "${value}" within "${within}" does not read as ${output}`);
    return {
      output,
      text: value,
      expected: wanted,
      within: near,
      got,
      holds: got !== undefined && Math.abs(got - wanted) <= near,
    };
  });
  return { units, result: { ...found, outputs }, given: figures, expected };
};
