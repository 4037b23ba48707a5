/**
 * The library as the engine takes it: every cell kind, every table a choice input can name and every trade function,
 * found by folder. A file added to `kinds`, `choices` or `functions` is in; no list is kept by hand.
 */
import { type Catalogue, catalogueOf, type Folders } from './catalogue-of.ts';
import type { CellKind, ChoiceTable, TradeFunction } from './record/cell.ts';

export { catalogueOf } from './catalogue-of.ts';

export const folders: Folders = {
  kinds: import.meta.glob<CellKind>('./kinds/*.ts', { eager: true, import: 'default' }),
  choices: import.meta.glob<ChoiceTable>('./choices/*.ts', { eager: true, import: 'default' }),
  functions: import.meta.glob<readonly TradeFunction[]>('./functions/*.ts', {
    eager: true,
    import: 'default',
  }),
};

/** The library that ships. */
export const library: Catalogue = catalogueOf(folders);
