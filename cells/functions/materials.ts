import type { TradeFunction } from '../record/cell.ts';
import { materialByKey } from '../tables/materials/materials.ts';

const functions: readonly TradeFunction[] = [
  {
    name: 'BRITTLE',
    purpose: '1 for a material that breaks before it yields, such as gray iron; 0 for one that yields first.',
    takes: [{ name: 'material', text: true }],
    gives: 'number',
    compute: (key) => {
      const material = materialByKey(String(key));
      if (!material) return { message: `There is no material "${key}" in the table.` };
      return material.brittle ? 1 : 0;
    },
    source: 'the table of materials',
  },
  {
    name: 'LEADED',
    purpose:
      '1 for a material that holds lead, such as leaded bronze or lead babbitt; 0 for one that does not.',
    takes: [{ name: 'material', text: true }],
    gives: 'number',
    compute: (key) => {
      const material = materialByKey(String(key));
      if (!material) return { message: `There is no material "${key}" in the table.` };
      return material.leaded ? 1 : 0;
    },
    source: 'the table of materials',
  },
];

export default functions;
