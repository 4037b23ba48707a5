import type { ChoiceTable } from '../record/cell.ts';
import { fromMemory, property } from '../tables/table.ts';

const guide = fromMemory(
  'Tribology Handbook (Neale, 2e), least clearance of crankshaft bearings: white metal 0.0005, copper-lead 0.00075, aluminium 0.001 of the diameter',
);
const practice = fromMemory('common practice, no source');

/** The clearance of a bearing metal as a share of that of bronze or babbitt, for which the shop rules were made. */
const table: ChoiceTable = {
  title: 'Bearing metals by the clearance they want',
  rows: [
    { key: 'babbitt', name: 'babbitt, tin or lead', columns: { times: property(1, 1, [0.7, 1], guide) } },
    { key: 'copper-lead', name: 'copper-lead lining', columns: { times: property(1, 1, [1, 1.5], guide) } },
    { key: 'bronze', name: 'bronze or brass', columns: { times: property(1, 1, [1, 1], practice) } },
    { key: 'cast-iron', name: 'cast iron', columns: { times: property(1, 1.2, [1, 1.5], practice) } },
    {
      key: 'light-alloy',
      name: 'light alloy, aluminium-tin or solid',
      columns: { times: property(1, 2, [1.5, 2.2], guide) },
      note: 'It grows twice as fast as the steel of the journal and seizes sooner.',
    },
  ],
};

export default table;
