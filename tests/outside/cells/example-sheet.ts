import { library } from '../../../cells/catalogue.ts';
import type { CellKind, WorkedExample } from '../../../cells/record/cell.ts';
import { libraryFor } from '../../../src/engine/book/example-library.ts';
import { exampleCells, workOut } from '../../../src/engine/book/worked-example.ts';
import { type Line, sheetOf } from './sheet-of.ts';

/** One library cell named `it` with these entries, computed by the engine; more lines may stand beside it. */
export const sheetWith = (
  kindKey: string,
  inputs: WorkedExample['inputs'],
  beside: Readonly<Record<string, Line>> = {},
  length: 'in' | 'mm' = 'mm',
) => {
  const kind = library.kinds.get(kindKey);
  if (!kind) throw new Error(`there is no cell kind ${kindKey}`);
  const lines = Object.fromEntries(exampleCells(kind, inputs).map(({ name, ...line }) => [name, line]));
  return sheetOf({ ...lines, ...beside }, { length, library: libraryFor(library, kind, inputs) });
};

/** Computes a worked example: per output what came out, what was expected and how near it must be, SI. */
export const workedOut = (kind: CellKind, example: WorkedExample) =>
  workOut(library, kind, example).expected.map(({ output, got = Number.NaN, expected, within }) => ({
    name: output,
    got,
    expected,
    tolerance: within,
  }));
