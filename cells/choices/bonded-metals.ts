import type { ChoiceTable } from '../record/cell.ts';
import { fromMemory, property } from '../tables/table.ts';

const metals = (light: number) => ({
  light: property(1, light, [light, light], fromMemory("makers' data sheets at large")),
});

/** Metals by how well an anaerobic compound cures on them. */
const table: ChoiceTable = {
  title: 'Metals of a bonded joint',
  rows: [
    { key: 'steel-or-iron', name: 'steel, iron, brass or bronze', columns: metals(0) },
    {
      key: 'light-or-stainless',
      name: 'one part of aluminium, stainless or plated',
      columns: metals(1),
      note: 'Cures slowly there: an activator, and its share of strength from the sheet.',
    },
  ],
};

export default table;
