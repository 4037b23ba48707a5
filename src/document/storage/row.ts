import type { CheckState } from '../../../shared/checks/check.ts';
import { searchForm } from '../../../shared/search-form.ts';
import type { CellRecord, TitleBlock } from '../../../shared/sheet/format.ts';
import type { SheetDocument } from '../sheet-document.ts';

/** How many checks of a sheet stand in which state. */
export type CheckCounts = Partial<Record<CheckState, number>>;

/** The head line of a sheet, with the state that asks for most. */
export interface Head {
  state: CheckState;
  words: string;
}

/** One sheet in the shop's list. Times are milliseconds since 1970. */
export interface ListRow {
  id: string;
  title: TitleBlock;
  template: boolean;
  archived: boolean;
  /** When it was deleted; it can be restored until it is discarded. */
  removed?: number;
  created: number;
  changed: number;
  /** Number of cells. */
  cells: number;
  /** Counted of the sheet with this fingerprint, at that time; stale once `changed` is later. */
  checks?: { counts: CheckCounts; standing?: Head; fingerprint: string; at: number };
  /** Folded text that a search looks through. */
  search: string;
}

export type RowChange = (row: ListRow | undefined) => ListRow | undefined;

/** A line that has not changed is the same object: its words are folded once, not with every entry elsewhere. */
const folded = new WeakMap<CellRecord, readonly string[]>();

function wordsOf(cell: CellRecord): readonly string[] {
  let words = folded.get(cell);
  if (!words) {
    // Choices such as the material; formulas and numbers find nothing anybody would look for.
    const choices = Object.values(cell.inputs ?? {}).filter((text) => /^\p{L}/u.test(text));
    words = [cell.label, cell.name, cell.material, ...choices].flatMap((word) =>
      word ? [searchForm(word)] : [],
    );
    folded.set(cell, words);
  }
  return words;
}

/** What the list shows of a sheet, put into the row it had. */
export function rowOf(sheet: SheetDocument, time: number, row?: ListRow): ListRow {
  const title = sheet.title();
  const cells = sheet.cells();
  const words = new Set<string>();
  // A title block from elsewhere may hold anything.
  for (const value of Object.values(title))
    for (const word of [value].flat()) if (typeof word === 'string' && word) words.add(searchForm(word));
  for (const cell of cells) for (const word of wordsOf(cell)) words.add(word);
  return {
    ...row,
    id: sheet.id,
    title,
    template: sheet.template(),
    archived: row?.archived ?? false,
    created: row?.created ?? time,
    changed: time,
    cells: cells.length,
    search: [...words].join('\n'),
  };
}
