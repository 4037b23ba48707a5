/**
 * The part of JSON Schema 2020-12 that the sheet's schema uses, interpreted: the reader checks by it and the writer takes
 * its order from it.
 */
export interface Schema {
  description?: string;
  $ref?: string;
  type?: string;
  const?: unknown;
  enum?: readonly unknown[];
  properties?: Readonly<Record<string, Schema>>;
  required?: readonly string[];
  additionalProperties?: Schema;
  items?: Schema;
  maxItems?: number;
  minLength?: number;
  minimum?: number;
}

/** A schema with the definitions that it refers to. */
export interface RootSchema extends Schema {
  $schema: string;
  $id: string;
  title: string;
  $defs: Readonly<Record<string, Schema>>;
}

/** Where a file departs from the schema. */
export interface Fault {
  kind: 'syntax' | 'too-big';
  /** `cells[3].limits.lower`; empty for the file itself. */
  path: string;
  /** What is there and what should be. */
  message: string;
}

export const resolve = (schema: Schema, root: RootSchema): Schema => {
  const name = schema.$ref?.replace('#/$defs/', '');
  return name === undefined ? schema : (root.$defs[name] as Schema);
};

export type JsonObject = Record<string, unknown>;

export const isObject = (value: unknown): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const typeOf = (value: unknown): string => {
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'array';
  if (Number.isInteger(value)) return 'integer';
  return typeof value;
};

const WORDS: Readonly<Record<string, string>> = {
  null: 'empty (null)',
  array: 'a list',
  object: 'a group of fields',
  string: 'text',
  number: 'a number',
  integer: 'a whole number',
  boolean: 'true or false',
};

const shown = (value: unknown): string => {
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
};

const MAX_FAULTS = 20;

/** Faults of `value`, at most twenty; none when it is as the schema says. */
export const faultsOf = (value: unknown, root: RootSchema): Fault[] => {
  const faults: Fault[] = [];
  const add = (path: string, message: string, kind: Fault['kind'] = 'syntax'): void => {
    if (faults.length < MAX_FAULTS) faults.push({ kind, path, message });
  };

  const visit = (here: unknown, reference: Schema, path: string): void => {
    if (faults.length >= MAX_FAULTS) return;
    const s = resolve(reference, root);
    const type = typeOf(here);
    if (s.type && s.type !== type && !(s.type === 'number' && type === 'integer')) {
      add(path, `is ${WORDS[type] ?? type}; it must be ${WORDS[s.type] ?? s.type}`);
      return;
    }
    if (s.const !== undefined && here !== s.const)
      add(path, `is ${shown(here)}; it must be ${shown(s.const)}`);
    if (s.enum && !s.enum.includes(here))
      add(path, `is ${shown(here)}; it must be one of ${s.enum.join(', ')}`);
    if (s.minLength !== undefined && typeof here === 'string' && here.length < s.minLength)
      add(path, 'is empty');
    if (s.minimum !== undefined && typeof here === 'number' && here < s.minimum)
      add(path, `is ${here}; it must be at least ${s.minimum}`);
    if (Array.isArray(here)) {
      if (s.maxItems !== undefined && here.length > s.maxItems)
        add(path, `has ${here.length} items; at most ${s.maxItems} are read`, 'too-big');
      else if (s.items) for (const [i, item] of here.entries()) visit(item, s.items, `${path}[${i}]`);
    }
    if (!isObject(here)) return;
    const below = (key: string): string => (path ? `${path}.${key}` : key);
    for (const [key, item] of Object.entries(here)) {
      const known =
        s.properties && Object.hasOwn(s.properties, key) ? s.properties[key] : s.additionalProperties;
      if (known) visit(item, known, below(key));
    }
    for (const key of s.required ?? []) if (!Object.hasOwn(here, key)) add(below(key), 'is missing');
  };

  visit(value, root, '');
  return faults;
};
