/**
 * How often a good reading is asked about, over 10,000 clean synthetic sheets, and what share of slips of each kind is
 * asked about where it was made. `npm run slips -- 1000` for fewer sheets.
 */
import { caught, falseAlarms } from '../engine/slips/run.ts';

const SEED = 20261125;
const sheets = Number(process.argv[2] ?? 10_000);

const { readings, total, byKind } = falseAlarms(sheets, SEED);
console.log(
  `${sheets} clean sheets, ${readings} readings: ${total} questions, one in ${Math.round(readings / total)}`,
);
console.log(byKind);

const share = (part: number, of: number): string => `${((100 * part) / of).toFixed(0)} %`;
const rows = Object.entries(caught(Math.max(20, Math.round(sheets / 20)), SEED)).map(([slip, one]) => ({
  slip,
  made: one.made,
  'asked about': share(one.asked, one.made),
  'named rightly': share(one.named, one.made),
  'offered rightly': share(one.right, one.made),
}));
console.table(rows);
