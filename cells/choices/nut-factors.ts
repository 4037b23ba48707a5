import type { ChoiceTable } from '../record/cell.ts';
import { nutFactors } from '../tables/bolts.ts';

const table: ChoiceTable = {
  title: 'How bolts are oiled: nut factors',
  rows: nutFactors.map(({ key, name, factor }) => ({ key, name, columns: { factor } })),
};

export default table;
