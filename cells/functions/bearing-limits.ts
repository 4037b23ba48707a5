import type { TradeFunction } from '../record/cell.ts';
import { bearingLimitByKey } from '../tables/bearing-limits.ts';

const functions: readonly TradeFunction[] = [
  {
    name: 'SPEEDLIMIT',
    purpose:
      'Greatest surface speed of a plain bearing material in boundary lubrication; 0 where the table gives none.',
    takes: [{ name: 'bearing', text: true }],
    gives: 'speed',
    compute: (key) => {
      const row = bearingLimitByKey(String(key));
      return row
        ? (row.v?.value ?? 0)
        : { message: `There is no plain bearing material "${key}" in the table.` };
    },
    source: 'the table of plain bearing material limits',
  },
];

export default functions;
