import type { ChoiceTable } from '../record/cell.ts';

const table: ChoiceTable = {
  title: 'Series of threads to choose from',
  rows: [
    { key: 'UNC', name: 'inch, coarse (UNC)', columns: {} },
    { key: 'UNF', name: 'inch, fine (UNF)', columns: {} },
    { key: 'metric', name: 'metric, coarse', columns: {} },
  ],
};

export default table;
