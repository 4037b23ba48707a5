import type { ChoiceTable } from '../record/cell.ts';
import type { Property } from '../tables/table.ts';
import { fromMemory, property } from '../tables/table.ts';

const ends = (count: number): Property =>
  property(1, count, [count, count], fromMemory('common practice, no source'));

/** How many times the figure given goes into the whole excess of the two half shells. */
const table: ChoiceTable = {
  title: 'How shell crush is counted',
  rows: [
    { key: 'each-end', name: 'each end of each half shell stands out by it', columns: { times: ends(4) } },
    {
      key: 'each-joint',
      name: 'each joint: both ends meeting there stand out by it together',
      columns: { times: ends(2) },
    },
    {
      key: 'each-half',
      name: 'each half shell, one end held flush, stands out by it at the other',
      columns: { times: ends(2) },
    },
    {
      key: 'the-pair',
      name: 'the pair: one joint closed, the other gapes by it',
      columns: { times: ends(1) },
    },
  ],
};

export default table;
