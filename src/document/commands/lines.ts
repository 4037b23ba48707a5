import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Editing } from '../model/editing.ts';
import { freshId } from '../model/fresh-id.ts';
import { freeName, nameFrom } from '../model/names.ts';
import { spread } from '../model/order.ts';
import { GONE, ORDER } from '../model/replica.ts';
import { storedFields } from './field.ts';

/** Places for `count` lines after a line (`null`: at the top; a line that is gone: at the end). */
function placesAfter(
  e: Editing,
  after: string | null,
  count: number,
  moving?: ReadonlySet<string>,
): string[] {
  const ids = e.reading.order().filter((id) => !moving?.has(id));
  const place = (id: string) => String(e.replica.get(id, ORDER) ?? '');
  const at = after === null ? 0 : ids.includes(after) ? ids.indexOf(after) + 1 : ids.length;
  const low = at === 0 ? '' : place(ids[at - 1]!);
  // Lines that two people put in the same place at the same time share it; they move on to make room.
  let end = at;
  while (end < ids.length && place(ids[end]!) <= low) end++;
  const tied = ids.slice(at, end);
  const places = spread(low, end < ids.length ? place(ids[end]!) : undefined, count + tied.length);
  tied.forEach((id, k) => {
    e.set(id, ORDER, places[count + k]);
  });
  return places.slice(0, count);
}

const nameTaken = (e: Editing) => (name: string) => e.reading.idOf(name) !== undefined;

/** @returns the id of the new line. A name that is taken gets a number behind it. */
export function addCell(
  e: Editing,
  after: string | null,
  fields: Partial<CellRecord>,
  options: { nameFromLabel?: boolean } = {},
): string {
  const record = {
    role: fields.entry?.trimStart().startsWith('=') ? 'worked' : 'given',
    ...fields,
  } as CellRecord;
  const wish = record.name || (options.nameFromLabel && record.label ? nameFrom(record.label) : undefined);
  // Made unique here, so that a formula that says the wish means the line that had it before.
  if (wish) record.name = freeName(wish, nameTaken(e));
  return insertCells(e, after, [record])[0]!;
}

/**
 * Puts in lines from elsewhere (a copy, another sheet): new ids, names made unique, and references among them follow.
 *
 * @returns the new ids, in order.
 */
export function insertCells(
  e: Editing,
  after: string | null,
  records: readonly Partial<CellRecord>[],
): string[] {
  const places = placesAfter(e, after, records.length);
  const meant = new Map<string, string>();
  const ids = records.map((record, k) => {
    const id = freshId((other) => e.replica.cells.has(other));
    const fields = new Map<string, unknown>([
      [ORDER, places[k]],
      ['role', record.role ?? 'given'],
    ]);
    if (record.name) {
      fields.set('name', freeName(record.name.normalize('NFC'), nameTaken(e)));
      if (!meant.has(record.name)) meant.set(record.name, id);
    }
    e.create(id, fields);
    return id;
  });
  const stored = e.reading.withNames(meant, () =>
    records.map(({ id: _id, name: _name, role: _role, ...rest }, k) => storedFields(e, ids[k]!, rest)),
  );
  stored.forEach((fields, k) => {
    for (const [path, value] of fields) e.set(ids[k], path, value);
  });
  return ids;
}

/** Copies lines and puts the copies after the last of them; what they say of each other, the copies say of the copies. */
export function duplicateCells(e: Editing, ids: readonly string[]): string[] {
  const wanted = new Set(ids);
  const sorted = e.reading.order().filter((id) => wanted.has(id));
  if (sorted.length === 0) return [];
  const records = sorted.map((id) => e.reading.cell(id)!);
  return insertCells(e, sorted.at(-1)!, records);
}

/** Moves lines, in their present order, behind another (`null`: to the top). */
export function moveCells(e: Editing, ids: readonly string[], after: string | null): void {
  const moving = new Set(ids);
  const order = e.reading.order();
  const sorted = order.filter((id) => moving.has(id));
  if (after !== null && moving.has(after)) {
    // Behind one of themselves: behind the nearest line above that stays.
    after = order.slice(0, order.indexOf(after)).findLast((id) => !moving.has(id)) ?? null;
  }
  const before = order.filter((id) => !moving.has(id));
  const at = after === null ? 0 : before.indexOf(after) + 1;
  const wish = [...before.slice(0, at), ...sorted, ...before.slice(at)];
  if (wish.every((id, k) => id === order[k])) return;
  const places = placesAfter(e, after, sorted.length, moving);
  sorted.forEach((id, k) => {
    e.set(id, ORDER, places[k]);
  });
}

/** Deleted lines stay in the document, marked; what refers to them goes on naming them. */
export function deleteCells(e: Editing, ids: readonly string[]): void {
  const shown = ids.map((id) => [id, e.reading.nameOf(id)] as const);
  for (const [id, name] of shown) {
    if (!e.replica.has(id)) continue;
    // A name with a number for a clash must stay that one, or formulas would turn to the other cell.
    if (name !== undefined) e.set(id, 'name', name);
    e.set(id, GONE, true);
  }
}
