import { searchForm } from '../../../shared/search-form.ts';
import type { SheetFile } from '../../../shared/sheet/format.ts';
import { type Differences, differences } from '../differences.ts';
import type { ListRow } from '../storage/row.ts';
import type { Shop } from '../storage/shop.ts';
import type { Revision } from '../storage/vault.ts';
import type { LengthUnit } from './own-units.ts';

/** A sheet of the shop that seems to be another state of the one that comes in. */
export interface Held {
  id: string;
  title: string;
  changed: number;
  /**
   * `same`: word for word what is here. `older`: what is here once stood so, and has gone on since. `other`: the two
   * differ, and nothing says which is the later one.
   */
  standing: 'same' | 'older' | 'other';
  /** The revision that equals what comes in. */
  revision?: Revision;
  /** From what is here to what comes in. */
  differences: Differences;
}

/** How many sheets are opened to compare; and words of the sheet that a likely one holds. */
const OPENED = 6;
const WORDS = 12;

/**
 * The sheets here that the one coming in may be a state of, the likeliest first.
 * @param inLengths the one coming in, in the lengths of the one here, as it would be taken over: another shop's inches are no difference.
 */
export async function heldHere(
  shop: Pick<Shop, 'list' | 'file' | 'revisions' | 'printer'>,
  file: SheetFile,
  inLengths: (file: SheetFile, length: LengthUnit) => Promise<SheetFile> = async (one) => one,
): Promise<Held[]> {
  const { printer } = shop;
  const print = await printer.print(file);
  const found: Array<Held & { likeness: number }> = [];
  for (const row of likely(shop.list(), file)) {
    const here = await shop.file(row.id);
    if (!('cells' in here)) continue;
    const likeness = sharedCells(here, file);
    const same = (await printer.print(here)) === print;
    if (likeness < 0.5 && !same) continue;
    const revision = same
      ? undefined
      : await lastOf(await shop.revisions(row.id), (one) => printer.isOf(one.fingerprint, file));
    found.push({
      id: row.id,
      title: row.title.title,
      changed: row.changed,
      standing: same ? 'same' : revision ? 'older' : 'other',
      ...(revision && { revision }),
      differences: differences(here, await inLengths(file, here.units.length)),
      likeness: likeness + (same ? 2 : revision ? 1 : 0),
    });
  }
  found.sort((a, b) => b.likeness - a.likeness || b.changed - a.changed);
  return found.map(({ likeness: _likeness, ...held }) => held);
}

async function lastOf(
  revisions: readonly Revision[],
  isIt: (revision: Revision) => Promise<boolean>,
): Promise<Revision | undefined> {
  for (const revision of revisions.toReversed()) if (await isIt(revision)) return revision;
  return undefined;
}

/** Rows whose title or words are those of the sheet, best first. A job is no state of a template. */
function likely(rows: readonly ListRow[], file: SheetFile): ListRow[] {
  const title = searchForm(file.title.title);
  const words = [...new Set(file.cells.flatMap(({ label, name }) => [label, name]))]
    .flatMap((word) => (word ? [searchForm(word)] : []))
    .sort((a, b) => b.length - a.length)
    .slice(0, WORDS);
  const ranked: Array<{ row: ListRow; rank: number }> = [];
  for (const row of rows) {
    if (row.removed !== undefined || row.template !== (file.template === true)) continue;
    const named = title !== '' && searchForm(row.title.title) === title ? 1 : 0;
    const held = words.filter((word) => row.search.includes(word)).length / Math.max(words.length, 1);
    if (named === 1 || held >= 0.5) ranked.push({ row, rank: named + held });
  }
  ranked.sort((a, b) => b.rank - a.rank || b.row.changed - a.row.changed);
  return ranked.slice(0, OPENED).map(({ row }) => row);
}

/** Share of cells, of the shorter sheet, that are in both: same id, same role. */
function sharedCells(a: SheetFile, b: SheetFile): number {
  const roles = new Map(a.cells.map(({ id, role }) => [id, role]));
  const shared = b.cells.filter(({ id, role }) => roles.get(id) === role).length;
  return shared / Math.max(1, Math.min(a.cells.length, b.cells.length));
}
