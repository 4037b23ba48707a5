/**
 * How often a good reading is asked about, and what share of slips of each kind is asked about where it was made: over
 * sheets of two shops of different habits, and over small sheets of a third on which one line can go wrong, by what
 * there is to compare it with. Then how often the ± of readings covers parts whose form is known. `npm run slips -- 1000` for other numbers of sheets, `-- 1000 7` for another seed; `-- 400 7
 * told` writes out what was missed, offered wrongly, or asked of good readings, and a last word (`shops`, `scenes`, `untuned`, `pumps`, `winches`, `trolleys`, `coverage`) takes only
 * that part.
 */
import { Asker } from '../engine/slips/asker.ts';
import type { Habits } from '../engine/slips/clean-sheet.ts';
import { coverage, FORMS } from '../engine/slips/coverage.ts';
import { OTHER_SHOP } from '../engine/slips/other-shop.ts';
import { pumpScene } from '../engine/slips/pump-shop.ts';
import { caught, falseAlarms } from '../engine/slips/run.ts';
import { cleanScenes, KINDS, type SceneMaker, scenesAsked } from '../engine/slips/scene-run.ts';
import { SITUATIONS, sceneOf } from '../engine/slips/scenes.ts';
import { trolleyScene } from '../engine/slips/trolley-shop.ts';
import { untunedScene } from '../engine/slips/untuned.ts';
import { winchScene } from '../engine/slips/winch-shop.ts';

const sheets = Number(process.argv[2] ?? 400);
const seed = Number(process.argv[3] ?? 20261125);
const isTold = process.argv[4] === 'told';
const only = process.argv[5];

/** What the right text would be stands elsewhere, or is not known. */
const ASKS_ONLY: ReadonlySet<string> = new Set(['interference', 'warm']);

const share = (part: number, of: number): string => (of === 0 ? '' : `${((100 * part) / of).toFixed(0)} %`);

function tell(shop: string, habits?: Habits): void {
  const { readings, total, byKind } = falseAlarms(sheets, seed, habits);
  console.log(
    `${shop}: ${sheets} clean sheets, ${readings} readings, ${total} questions, one in ${Math.round(readings / total)}`,
  );
  console.log(byKind);
  const rows = Object.entries(caught(Math.max(20, Math.round(sheets / 10)), seed, habits)).map(
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

/** By what a reading can be compared with. */
function tellScenes(shop: string, make: SceneMaker): void {
  const asker = new Asker();
  const each = Math.max(5, Math.round(sheets / 25));
  console.log(`${shop}: ${each} slips of each kind in each situation, asked about in %`);
  const rows = KINDS.map((kind) => {
    const all = SITUATIONS.map((situation) => scenesAsked(kind, situation, each, asker, seed, make));
    const sum = (of: 'made' | 'untold' | 'asked' | 'elsewhere' | 'twice' | 'offered' | 'true'): number =>
      all.reduce((n, one) => n + one[of], 0);
    if (isTold)
      for (const { missed, untrue } of all)
        for (const text of [...missed, ...untrue]) console.log(`${kind}: ${text}`);
    return {
      slip: kind,
      ...Object.fromEntries(all.map(({ asked, made }, i) => [SITUATIONS[i], share(asked, made)])),
      'told by nothing': sum('untold'),
      'in all': `${share(sum('asked'), sum('made'))} of ${sum('made')}`,
      'at another line alone': sum('elsewhere'),
      'at two lines': sum('twice'),
      offered: share(sum('offered'), sum('made')),
      'offers true': share(sum('true'), sum('offered')),
    };
  });
  console.table(rows);
  const clean = SITUATIONS.map((situation) => {
    const { lines, asked } = cleanScenes(situation, sheets, seed, asker, make);
    if (isTold) for (const text of asked) console.log(`${situation}, good: ${text}`);
    return {
      situation,
      'clean sheets': sheets,
      'lines read': lines,
      'asked about': asked.length,
      share: `${((100 * asked.length) / lines).toFixed(2)} %`,
    };
  });
  console.table(clean);
  asker.close();
}

/** Readings of parts whose form is known: how often what is printed covers what is, in %. */
function tellCoverage(): void {
  const asker = new Asker();
  const parts = Math.max(50, Math.round(sheets / 2));
  const shapes = [
    ['good', [1, 1]],
    ['good', [1, 2]],
    ['good', [1, 5]],
    ['good', [1, 8]],
    ['good', [2, 1]],
    ['good', [2, 2]],
    ['good', [3, 3]],
    ['good', [2, 2], '0.004 mm'],
    ['worn', [1, 1]],
    ['worn', [1, 8]],
    ['worn', [2, 1]],
    ['worn', [8, 1]],
    ['worn', [2, 2]],
    ['worn', [2, 3]],
    ['worn', [3, 2]],
    ['worn', [3, 3]],
    ['worn', [3, 4]],
    ['worn', [2, 2], '0.004 mm'],
    ['worn', [3, 2], '0.004 mm'],
    ['oval', [2, 2]],
  ] as const;
  const rows = shapes.map(([form, [along, around], doubt]) => {
    const found = coverage(FORMS[form], [along, around], parts, seed, 'iso14253-2013', asker, doubt);
    const of = (n: number): string => ((100 * n) / parts).toFixed(1);
    return {
      form,
      places: along,
      directions: around,
      'typed ±': doubt ?? '',
      mean: of(found.mean),
      least: of(found.least),
      greatest: of(found.greatest),
      'fit: less than least': of(found.below),
      'more than greatest': of(found.above),
      'where read': `${of(found.belowThere)} ${of(found.aboveThere)}`,
      proves: around === 1 ? 'where it was read' : along === 1 ? 'at that place' : 'the part',
    };
  });
  console.log(`${parts} fits of two parts, read with a micrometer of known scatter: covered, in %`);
  console.table(rows);
  asker.close();
}

if (!only || only === 'shops') {
  tell('a shop as the questions were first tried on');
  tell('another shop: other sizes, forms, scatter and wear', OTHER_SHOP);
}
if (!only || only === 'scenes') tellScenes('a third shop', sceneOf);
if (!only || only === 'untuned') tellScenes('a shop that nothing was tuned on', untunedScene);
if (!only || only === 'pumps') tellScenes('a shop of pumps, its habits settled beforehand', pumpScene);
if (!only || only === 'winches')
  tellScenes('a shop of winches, its habits settled beforehand too', winchScene);
if (!only || only === 'trolleys')
  tellScenes('a shop of trolleys, its habits settled beforehand as well', trolleyScene);
if (!only || only === 'coverage') tellCoverage();
