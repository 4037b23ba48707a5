import type { ChoiceTable } from '../record/cell.ts';

const table: ChoiceTable = {
  title: 'Drills at hand',
  rows: [
    { key: 'inch', name: 'number, letter and fraction drills', columns: {} },
    { key: 'fraction', name: 'fraction drills alone', columns: {} },
    { key: 'number', name: 'number and letter drills alone', columns: {} },
    { key: 'metric', name: 'millimetre drills', columns: {} },
    { key: 'any', name: 'all of them', columns: {} },
  ],
};

export default table;
