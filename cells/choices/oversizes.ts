import type { ChoiceTable } from '../record/cell.ts';
import type { oversizeSeries } from '../tables/undersizes.ts';

const names: Readonly<Record<keyof typeof oversizeSeries, string>> = {
  inch: 'Inch steps',
  mm: 'Millimetre steps',
};

const table: ChoiceTable = {
  title: 'Standard oversizes',
  rows: Object.entries(names).map(([key, name]) => ({ key, name, columns: {} })),
};

export default table;
