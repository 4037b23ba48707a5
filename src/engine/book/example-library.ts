import type { CellKind, WorkedExample } from '../../../cells/record/cell.ts';
import type { Library } from '../rows/library.ts';

export type ExampleEntries = WorkedExample['inputs'];

const enteredFor = (name: string): string => `given_${name}`;

/** Entries of a stand-in, from the figures it is to give. */
export const putIn = (entries: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries(entries).map(([name, entry]) => [enteredFor(name), entry]));

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
    inputs: figures.map(({ name, label, quantity = 'number' }) => ({
      name: enteredFor(name),
      label,
      quantity,
      optional: true,
    })),
    outputs: figures.map(({ name, label, quantity = 'number' }) => ({
      name,
      label,
      quantity,
      basis: 'geometry',
      formula: `=${enteredFor(name)}`,
    })),
    assumptions: [],
    sources: [],
    cautions: [],
    examples: [],
  };
};

/** The kind with an output more for every input that is a quantity, so that defaults worked out can be shown too. */
export const withInputs = (kind: CellKind): { kind: CellKind; outputOf: ReadonlyMap<string, string> } => {
  const outputOf = new Map(
    kind.inputs
      .filter((input) => input.quantity !== undefined)
      .map((input) => [input.name, `entered__${input.name}`]),
  );
  const shown = kind.inputs.flatMap(({ name, label, quantity }) => {
    const output = outputOf.get(name);
    return output && quantity
      ? [{ name: output, label, quantity, basis: 'geometry' as const, formula: `=${name}` }]
      : [];
  });
  return { kind: { ...kind, outputs: [...kind.outputs, ...shown] }, outputOf };
};

/** The library with this kind, and with stand-ins for the records that these entries describe by their outputs. */
export const libraryFor = (library: Library, kind: CellKind, entries: ExampleEntries): Library => {
  const kinds = new Map(library.kinds);
  for (const input of kind.inputs) {
    const of = input.record === undefined ? undefined : library.kinds.get(input.record);
    if (of && typeof entries[input.name] === 'object' && of.key !== kind.key) kinds.set(of.key, standIn(of));
  }
  kinds.set(kind.key, kind);
  return { ...library, kinds };
};
