import { CELL_FIELDS } from '../../../shared/sheet/cell-fields.ts';
import { isField, type Part, partAtPath } from '../../../shared/sheet/field.ts';
import type { Dismissal } from '../../../shared/sheet/format.ts';
import type { Editing } from '../model/editing.ts';
import { flatten, isPlain, storedPath } from '../model/fields.ts';
import { fieldOfKey } from '../model/readings.ts';
import { textKind } from '../model/texts.ts';

/** Fields of a record as stored: flat, with ids in the texts. `self` is the cell they belong to. */
export function storedFields(
  e: Editing,
  self: string,
  record: object,
  of: Part = CELL_FIELDS,
  prefix = '',
): Map<string, unknown> {
  const fields = flatten(record, of, prefix);
  for (const [path, value] of fields) fields.set(path, storedValue(e, self, path, value));
  return fields;
}

function storedValue(e: Editing, self: string, path: string, value: unknown): unknown {
  const kind = textKind(path);
  if (kind && typeof value === 'string') return e.reading.store(value, kind, self);
  if (path === 'dismissed' && Array.isArray(value)) {
    return value.map((d: Dismissal) => ({ ...d, text: e.reading.store(String(d.text), 'formula', self) }));
  }
  return value;
}

/**
 * Sets a field by its path in the file form. An empty text or `undefined` takes it away, a record replaces everything
 * below its path.
 */
export function setField(e: Editing, id: string, path: string, value: unknown): void {
  if (!e.replica.has(id)) return;
  const key = storedPath(path);
  const part = partAtPath(CELL_FIELDS, path);
  let fields = new Map<string, unknown>();
  if (part && !isField(part) && isPlain(value)) fields = storedFields(e, id, value, part, `${key}.`);
  else if (value !== undefined && value !== '') fields.set(key, storedValue(e, id, key, value));
  for (const [old] of [...e.replica.fields(id)]) {
    const of = fieldOfKey(old);
    if ((of === key || of.startsWith(`${key}.`)) && !fields.has(of)) e.set(id, old, undefined);
  }
  for (const [at, stored] of fields) e.set(id, at, stored);
}
