/**
 * The library as page and workers have it: trade functions from the start, a kind of cell and a table when a sheet first
 * uses it. A file added to `kinds` or `choices` is in; the build makes a script of its own of each.
 */
import { namedFunctions } from './catalogue-of.ts';
import { GrowingLibrary } from './growing-library.ts';
import type { CellKind, ChoiceTable, TradeFunction } from './record/cell.ts';

/** A library of which nothing has been fetched yet. */
export const libraryOnUse = (): GrowingLibrary =>
  new GrowingLibrary({
    kinds: import.meta.glob<CellKind>('./kinds/*.ts', { import: 'default' }),
    choices: import.meta.glob<ChoiceTable>('./choices/*.ts', { import: 'default' }),
    functions: namedFunctions(
      import.meta.glob<readonly TradeFunction[]>('./functions/*.ts', { eager: true, import: 'default' }),
    ),
  });
