import type { ChoiceTable } from '../record/cell.ts';
import { fitClasses } from '../tables/b41/b41.ts';

const table: ChoiceTable = {
  title: 'Inch fits of B4.1',
  rows: fitClasses.map(({ name, purpose }) => ({ key: name, name: `${name}, ${purpose}`, columns: {} })),
};

export default table;
