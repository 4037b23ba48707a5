import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import { SHEET_FIELDS } from '../../../shared/sheet/sheet-fields.ts';
import type { Editing } from '../model/editing.ts';
import { flatten } from '../model/fields.ts';
import { freshId } from '../model/fresh-id.ts';
import { spread } from '../model/order.ts';
import { fieldOfKey } from '../model/readings.ts';
import { GONE, ORDER } from '../model/replica.ts';
import { storeVariants } from '../model/variants.ts';
import { storedFields } from './field.ts';

/**
 * Makes the document say what a file says, by the fewest edits: cells are known again by their id. Serves import (into
 * an empty document) and going back to a revision.
 */
export function become(e: Editing, file: SheetFile): void {
  const { format: _format, version: _version, cells, ...settings } = file;
  const ids = cellIds(cells);
  const wanted = new Set(ids);
  for (const id of e.replica.live()) if (!wanted.has(id)) e.set(id, GONE, true);

  // Names first: the texts below are tied to cells by name.
  cells.forEach((record, k) => {
    const id = ids[k]!;
    if (!e.replica.cells.has(id)) e.create(id, new Map([['role', record.role as unknown]]));
    e.set(id, GONE, undefined);
    e.set(id, 'name', record.name);
    e.set(id, 'role', record.role);
  });
  const order = e.reading.order();
  if (ids.some((id, k) => order[k] !== id || e.replica.get(id, ORDER) === undefined)) {
    spread('', undefined, ids.length).forEach((place, k) => {
      e.set(ids[k], ORDER, place);
    });
  }

  // All texts are read before the first is written: each write makes the names be worked out anew.
  const stored = cells.map(({ id: _id, name: _name, role: _role, ...rest }, k) =>
    storedFields(e, ids[k]!, rest),
  );
  const variants = file.variants && storeVariants(file.variants, e.reading);
  stored.forEach((fields, k) => {
    const id = ids[k]!;
    for (const [path] of [...e.replica.fields(id)]) {
      if (!path.startsWith('#') && path !== 'name' && path !== 'role' && !fields.has(fieldOfKey(path)))
        e.set(id, path, undefined);
    }
    for (const [path, value] of fields) e.set(id, path, value);
  });

  const sheet = flatten({ ...settings, variants }, SHEET_FIELDS);
  for (const path of [...e.replica.sheet.keys()]) if (!sheet.has(path)) e.set(undefined, path, undefined);
  for (const [path, value] of sheet) e.set(undefined, path, value);
}

/** Ids of the cells; one that is missing or stands twice gets a new one, so that no cell is lost. */
function cellIds(cells: readonly CellRecord[]): string[] {
  const seen = new Set<string>();
  return cells.map(({ id }) => {
    const own = id && !seen.has(id) ? id : freshId((other) => seen.has(other));
    seen.add(own);
    return own;
  });
}
