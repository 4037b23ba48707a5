import type { ChoiceTable } from '../record/cell.ts';
import { fromMemory, property } from '../tables/table.ts';

const way = (shrunk: number) => ({
  shrunk: property(1, shrunk, [shrunk, shrunk], fromMemory('DIN 7190-1 tells the two apart')),
});

/** How two parts with an interference are brought together: what grips is not scraped smooth when one is heated or cooled. */
const table: ChoiceTable = {
  title: 'How the parts are joined',
  rows: [
    { key: 'pressed', name: 'pressed in or on, lengthwise', columns: way(0) },
    { key: 'shrunk', name: 'shrunk: the outer part heated, or the inner one cooled', columns: way(1) },
  ],
};

export default table;
