/**
 * How often a good reading is asked about, over 10,000 clean synthetic sheets of each of two shops, and what share of
 * slips of each kind is asked about where it was made. `npm run slips -- 1000` for fewer sheets, `-- 1000 7` for another
 * seed.
 */
import type { Habits } from '../engine/slips/clean-sheet.ts';
import { OTHER_SHOP } from '../engine/slips/other-shop.ts';
import { caught, falseAlarms } from '../engine/slips/run.ts';

const sheets = Number(process.argv[2] ?? 10_000);
const seed = Number(process.argv[3] ?? 20261125);

/** What the right text would be stands elsewhere, or is not known. */
const ASKS_ONLY: ReadonlySet<string> = new Set(['interference', 'warm']);

const share = (part: number, of: number): string => (of === 0 ? '' : `${((100 * part) / of).toFixed(0)} %`);

function tell(shop: string, habits?: Habits): void {
  const { readings, total, byKind } = falseAlarms(sheets, seed, habits);
  console.log(
    `${shop}: ${sheets} clean sheets, ${readings} readings, ${total} questions, one in ${Math.round(readings / total)}`,
  );
  console.log(byKind);
  const rows = Object.entries(caught(Math.max(20, Math.round(sheets / 20)), seed, habits)).map(
    ([slip, one]) => ({
      slip,
      made: one.made,
      'asked about': share(one.asked, one.made),
      'named rightly': share(one.named, one.made),
      'of those beyond its scatter': `${share(one.namedPlain, one.madePlain)} of ${one.madePlain}`,
      'offered rightly': ASKS_ONLY.has(slip) ? 'nothing to offer' : share(one.right, one.made),
    }),
  );
  console.table(rows);
}

tell('a shop as the questions were first tried on');
tell('another shop: other sizes, forms, scatter and wear', OTHER_SHOP);
