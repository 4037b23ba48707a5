import type { ChoiceTable } from '../record/cell.ts';
import { boltGrades } from '../tables/bolts.ts';

const table: ChoiceTable = {
  title: 'Bolt grades and property classes',
  rows: boltGrades.map(({ key, name, ...columns }) => ({ key, name, columns: { ...columns } })),
};

export default table;
