import { CELL_FIELDS } from '../../../shared/sheet/cell-fields.ts';
import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import { SHEET_FIELDS } from '../../../shared/sheet/sheet-fields.ts';
import { differences, type Tie, tied } from '../differences.ts';
import { flatten, unflatten } from '../model/fields.ts';
import { freeName } from '../model/names.ts';
import { idsIn, toNames } from '../model/references.ts';
import { textKind } from '../model/texts.ts';
import { mapVariants } from '../model/variants.ts';

/** Which of the differences from one sheet to another are taken. */
export interface Taken {
  /** Ids of lines. */
  cells: ReadonlySet<string>;
  /** Fields of the sheet itself. */
  sheet: ReadonlySet<string>;
  order: boolean;
}

/** A sheet with what was taken of another, and the lines that had to come along. */
export interface TakenSheet {
  file: SheetFile;
  /** New lines nobody chose, which a taken one goes by. */
  along: CellRecord[];
}

const mapFields = (record: CellRecord, map: Tie): CellRecord =>
  unflatten(
    [...flatten(record, CELL_FIELDS)].map(([field, value]) => [field, map(field, value)]),
  ) as unknown as CellRecord;

/**
 * The sheet that is here with the chosen differences of the one that came, both in the same units. Formulas go on meaning
 * the lines they meant, whatever those are called in the result; a new line that a taken one goes by comes along, since
 * its name may stand for another line here.
 */
export function takeDifferences(here: SheetFile, came: SheetFile, taken: Taken): TakenSheet {
  const all = new Map(differences(here, came).cells.map((change) => [change.id, change]));
  const wanted = new Set([...taken.cells].filter((id) => all.has(id)));
  const [tieHere, tieCame] = [tied(here), tied(came)];
  const theirs = new Map(came.cells.map((cell) => [cell.id, mapFields(cell, tieCame)]));

  const along: CellRecord[] = [];
  const queue = [...wanted];
  for (let id = queue.pop(); id !== undefined; id = queue.pop()) {
    const record = theirs.get(id);
    if (!record) continue;
    for (const value of flatten(record, CELL_FIELDS).values())
      for (const other of typeof value === 'string' ? idsIn(value) : []) {
        if (wanted.has(other) || all.get(other)?.what !== 'added') continue;
        wanted.add(other);
        queue.push(other);
        along.push(all.get(other)!.cell);
      }
  }

  const cells = here.cells.flatMap((cell) => {
    const what = wanted.has(cell.id) ? all.get(cell.id)!.what : undefined;
    if (what === 'gone') return [];
    return [what === 'changed' ? theirs.get(cell.id)! : mapFields(cell, tieHere)];
  });
  came.cells.forEach((cell, k) => {
    if (!wanted.has(cell.id) || all.get(cell.id)!.what !== 'added') return;
    cells.splice(placeBehind(cells, came.cells.slice(0, k)), 0, theirs.get(cell.id)!);
  });
  const ordered = taken.order ? inOrderOf(came, cells) : cells;

  const nameOf = namesIn(here, came, ordered);
  const named: Tie = (field, value) => {
    if (field === 'variants' && Array.isArray(value)) {
      const name = (text: string) => toNames(text, nameOf);
      return mapVariants(value, name, name);
    }
    return textKind(field) && typeof value === 'string' ? toNames(value, nameOf) : value;
  };
  const settings = settingsOf(here);
  const theirSettings = settingsOf(came);
  for (const field of taken.sheet) {
    const value = theirSettings.get(field);
    if (value === undefined) settings.delete(field);
    else settings.set(field, value);
  }
  const file = {
    ...unflatten([...settings].map(([field, value]) => [field, named(field, value)])),
    cells: ordered.map((cell) => {
      const record = mapFields(cell, named);
      return cell.name ? { ...record, name: nameOf(cell.id)! } : record;
    }),
  } as unknown as SheetFile;
  return { file, along };
}

/** Settings of a sheet as flat fields, with ids in place of names. */
function settingsOf(file: SheetFile): Map<string, unknown> {
  const { cells: _cells, ...settings } = file;
  const tie = tied(file);
  return new Map([...flatten(settings, SHEET_FIELDS)].map(([field, value]) => [field, tie(field, value)]));
}

/**
 * What each line is called in the result. A name stays with the line that has it here, and one that is still gone by,
 * though its line went, is given to no other: no formula turns to another line.
 */
function namesIn(
  here: SheetFile,
  came: SheetFile,
  cells: readonly CellRecord[],
): (id: string) => string | undefined {
  const before = new Map([...came.cells, ...here.cells].map(({ id, name }) => [id, name]));
  const there = new Set(cells.map(({ id }) => id));
  const used = new Set<string>();
  for (const cell of cells)
    for (const value of flatten(cell, CELL_FIELDS).values())
      for (const id of typeof value === 'string' ? idsIn(value) : []) {
        const name = there.has(id) ? undefined : before.get(id);
        if (name) used.add(name);
      }
  const mine = new Map(here.cells.map(({ id, name }) => [id, name]));
  const keeps = (cell: CellRecord) => mine.get(cell.id) === cell.name;
  const names = new Map<string, string>();
  for (const cell of [...cells.filter(keeps), ...cells.filter((one) => !keeps(one))]) {
    if (!cell.name) continue;
    const name = keeps(cell) ? cell.name : freeName(cell.name, (one) => used.has(one));
    used.add(name);
    names.set(cell.id, name);
  }
  return (id) => names.get(id) ?? before.get(id);
}

/** Behind the last of the lines above it that are there. */
function placeBehind(cells: readonly CellRecord[], above: readonly CellRecord[]): number {
  for (const { id } of above.toReversed()) {
    const at = cells.findIndex((cell) => cell.id === id);
    if (at >= 0) return at + 1;
  }
  return 0;
}

/** The lines that both have in the order of the other sheet; the others stay where they are. */
function inOrderOf(came: SheetFile, cells: readonly CellRecord[]): CellRecord[] {
  const byId = new Map(cells.map((cell) => [cell.id, cell]));
  const shared = came.cells.flatMap(({ id }) => byId.get(id) ?? []);
  const isShared = new Set(shared.map(({ id }) => id));
  return cells.map((cell) => (isShared.has(cell.id) ? shared.shift()! : cell));
}
