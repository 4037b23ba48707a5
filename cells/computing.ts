/**
 * The library as far as the engine computes with it, for the workers: of each kind of cell what is only read (sources,
 * assumptions, cautions, examples, drawing, hints) is left out when the page is built.
 */
import { type Catalogue, catalogueOf } from './catalogue-of.ts';
import type { CellKind, ChoiceTable, TradeFunction } from './cell.ts';

export const library: Catalogue = catalogueOf({
  kinds: import.meta.glob<CellKind>('./kinds/*.ts', { eager: true, import: 'default', query: '?computing' }),
  choices: import.meta.glob<ChoiceTable>('./choices/*.ts', { eager: true, import: 'default' }),
  functions: import.meta.glob<readonly TradeFunction[]>('./functions/*.ts', {
    eager: true,
    import: 'default',
  }),
});
