import type { ChoiceTable } from '../record/cell.ts';

const table: ChoiceTable = {
  title: 'Systems of parallel keys',
  rows: [
    { key: 'inch-square', name: 'inch, square (B17.1)', columns: {} },
    { key: 'inch-rectangular', name: 'inch, rectangular (B17.1)', columns: {} },
    { key: 'metric', name: 'metric (DIN 6885-1)', columns: {} },
  ],
};

export default table;
