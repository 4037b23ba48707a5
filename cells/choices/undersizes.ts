import type { ChoiceTable } from '../record/cell.ts';
import type { undersizeSeries } from '../tables/undersizes.ts';

const names: Readonly<Record<keyof typeof undersizeSeries, string>> = {
  inch: 'Inch steps',
  mm: 'Millimetre steps',
  'inch polish': 'Inch, after polishing only',
  'mm polish': 'Millimetre, after polishing only',
};

const table: ChoiceTable = {
  title: 'Standard undersizes',
  rows: Object.entries(names).map(([key, name]) => ({ key, name, columns: {} })),
};

export default table;
