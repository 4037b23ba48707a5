import { isField, type Part, partAt } from '../../../shared/sheet/field.ts';

/**
 * A cell lies in the document as flat fields, `limits.lower` or `outputs.close_in.measured.entry`, so that two people
 * who edit different fields of one cell both keep their edit. Records the format does not know stay whole.
 */

type Plain = Record<string, unknown>;

export const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

// A point inside a key (or the mark of our own fields, `#`) would be taken for the structure.
const escapeKey = (key: string) => key.replace(/[%.#]/g, (c) => `%${c.charCodeAt(0).toString(16)}`);
const unescapeKey = (key: string) =>
  key.replace(/%([0-9a-f]{2})/g, (_, hex) => String.fromCharCode(Number.parseInt(hex, 16)));

/** Yjs stores text as UTF-8, where half a surrogate pair has no place: it would come back from disk as another text. */
const LONE = /[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;

/** A copy that can be stored and comes back the same. */
export function storable(value: unknown): unknown {
  if (typeof value === 'string') return value.replace(LONE, '\uFFFD');
  if (typeof value !== 'object' || value === null) return value;
  return JSON.parse(JSON.stringify(value).replace(/\\u[dD][89a-fA-F][0-9a-fA-F]{2}/g, '\\ufffd'));
}

/** Flat fields of a record, taken apart where the format has groups. An empty record is kept as such, so that export gives back what import read. */
export function flatten(record: object, of: Part, prefix = ''): Map<string, unknown> {
  const fields = new Map<string, unknown>();
  for (const [key, value] of Object.entries(record)) {
    if (value === undefined) continue;
    const path = prefix + escapeKey(key);
    const inner = partAt(of, key);
    if (inner && !isField(inner) && isPlain(value) && Object.keys(value).length > 0) {
      for (const [at, leaf] of flatten(value, inner, `${path}.`)) fields.set(at, leaf);
    } else {
      fields.set(path, storable(value));
    }
  }
  return fields;
}

/** Defined, not assigned: a key such as `__proto__` must stay data. */
function put(record: Plain, key: string, value: unknown): void {
  Object.defineProperty(record, key, { value, enumerable: true, writable: true, configurable: true });
}

/** The record behind flat fields; our own fields (`#order`) are left out. */
export function unflatten(fields: Iterable<[string, unknown]>): Plain {
  const record: Plain = {};
  // Shorter paths first, so that an empty record is there before what was put into it.
  const sorted = [...fields].sort((a, b) => a[0].length - b[0].length);
  for (const [path, value] of sorted) {
    if (path.startsWith('#')) continue;
    const keys = path.split('.').map(unescapeKey);
    const last = keys.pop()!;
    let into = record;
    for (const key of keys) {
      const next = Object.hasOwn(into, key) ? into[key] : undefined;
      if (!isPlain(next)) put(into, key, {});
      into = into[key] as Plain;
    }
    put(into, last, typeof value === 'object' && value !== null ? structuredClone(value) : value);
  }
  return record;
}

/**
 * Path of a field as the page writes it (`inputs.housing`, `outputs.close_in.limits.upper`) as the key it is stored
 * under. Input and output names hold no point.
 */
export function storedPath(path: string): string {
  return path.split('.').map(escapeKey).join('.');
}

export const sameValue = (a: unknown, b: unknown): boolean =>
  a === b || (typeof a === 'object' && typeof b === 'object' && JSON.stringify(a) === JSON.stringify(b));
