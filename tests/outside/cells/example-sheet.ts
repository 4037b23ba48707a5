import { library } from '../../../cells/catalogue.ts';
import type { CellKind, WorkedExample } from '../../../cells/cell.ts';
import type { Library } from '../../../src/engine/client-types.ts';
import { cell, figure, given, type Line, sheetOf } from './sheet-of.ts';

type Entries = Readonly<Record<string, string | Readonly<Record<string, string>>>>;

/** A kind that gives out what is entered into it, in place of one an example describes by its outputs alone. */
const standIn = (kind: CellKind): CellKind => {
  // A formula may read a record's inputs as well as its outputs.
  const figures = [...kind.outputs, ...kind.inputs.filter((input) => input.quantity !== undefined)];
  return {
    key: kind.key,
    edition: kind.edition,
    title: kind.title,
    purpose: 'Stands in for a cell by its outputs.',
    group: kind.group,
    inputs: figures.map((output) => ({
      name: `given_${output.name}`,
      label: output.label,
      quantity: output.quantity,
      optional: true,
    })),
    outputs: figures.map(({ name, label, quantity = 'number' }) => ({
      name,
      label,
      quantity,
      formula: `=given_${name}`,
    })),
    assumptions: [],
    sources: [],
    cautions: [],
    examples: [],
  };
};

/** The library with stand-ins for the records that these entries describe by their outputs. */
const libraryFor = (kind: CellKind, inputs: Entries): Library => {
  const kinds = new Map(library.kinds);
  for (const input of kind.inputs) {
    const of = input.record === undefined ? undefined : library.kinds.get(input.record);
    if (of && typeof inputs[input.name] === 'object' && of.key !== kind.key) kinds.set(of.key, standIn(of));
  }
  return { ...library, kinds };
};

const renamed = (entries: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries(entries).map(([name, entry]) => [`given_${name}`, entry]));

/** One library cell named `it` with these entries, computed by the engine; more lines may stand beside it. */
export const sheetWith = (
  kindKey: string,
  inputs: Entries,
  beside: Readonly<Record<string, Line>> = {},
  length: 'in' | 'mm' = 'mm',
) => {
  const kind = library.kinds.get(kindKey);
  if (!kind) throw new Error(`there is no cell kind ${kindKey}`);
  const lines: Record<string, Line> = {};
  const own: Record<string, string> = {};
  for (const [name, entry] of Object.entries(inputs)) {
    if (typeof entry === 'string') own[name] = entry;
    else {
      const record = kind.inputs.find((input) => input.name === name)?.record;
      if (record === undefined) throw new Error(`${kindKey}.${name} takes no record`);
      lines[`of_${name}`] = cell(record, renamed(entry));
      own[name] = `of_${name}`;
    }
  }
  return sheetOf(
    { ...lines, it: cell(kindKey, own), ...beside },
    { length, library: libraryFor(kind, inputs) },
  );
};

/** Computes a worked example: per output what came out, what was expected and how near it must be, SI. */
export const workedOut = (kind: CellKind, example: WorkedExample) => {
  const beside: Record<string, Line> = {};
  for (const [name, { value, within }] of Object.entries(example.expect)) {
    const quantity = kind.outputs.find((output) => output.name === name)?.quantity ?? 'number';
    beside[`expected_${name}`] = given(quantity, value);
    if (typeof within === 'string')
      beside[`near_${name}`] = given(
        quantity === 'temperature' ? 'temperature difference' : quantity,
        within,
      );
  }
  const sheet = sheetWith(kind.key, example.inputs, beside);
  return Object.entries(example.expect).map(([name, { within }]) => {
    const expected = figure(sheet, `expected_${name}`).value;
    const tolerance =
      typeof within === 'number' ? Math.abs(expected) * within : figure(sheet, `near_${name}`).value;
    return { name, got: figure(sheet, 'it', name).value, expected, tolerance };
  });
};
