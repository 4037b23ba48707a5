import type { Schema } from './schema.ts';

/**
 * How the cells that a text names are tied to it. `formula`: an entry, names in it are references. `name`: the whole text is the
 * name of a cell. `input`: an entry, or the bare name of a library cell whose outputs it takes as a record.
 */
export type TextKind = 'formula' | 'name' | 'input';

/** How a text is read as an entry: `own` is the kind of quantity, or the role, of the line, input or output it belongs to. */
export interface ReadAs {
  quantity: 'own' | 'temperature';
  role: 'own' | 'measured' | 'given';
}

/**
 * What a template does with a field. `kept`: it is part of the template, and a job may take over what the template changes
 * later. `own`: kept, but the job's own from then on. `emptied`: it belongs to the one job and to the people in it.
 */
type InTemplate = 'kept' | 'own' | 'emptied';

/** One field of a sheet: everything that undo, history, file, template, units and paper must know of it. */
export interface Field {
  /** What people call it, wherever it is spoken of. */
  readonly label: string;
  /** What a file may hold there, and what that means. */
  readonly schema: Schema;
  /** Figures or verdicts depend on it. */
  readonly computed: boolean;
  readonly template: InTemplate;
  /** Text with the names of cells in it. */
  readonly refers?: TextKind;
  /** Text that is read as an entry: a number in it without a unit takes that of the sheet. */
  readonly reads?: ReadAs;
  /** Says how values are shown, and changes none: the fingerprint leaves it out. */
  readonly shown?: true;
  /** Printed among the notes of the sheet. */
  readonly noted?: true;
  /** Box of the title block, on the page and on paper: its place, and whether a narrow screen shows it at first. */
  readonly box?: { readonly place: number; readonly first: boolean };
  /** What the values of an enumeration are called, where the file's own word says it badly. */
  readonly values?: Readonly<Record<string, string>>;
}

/** Fields under names that the format gives. The document stores each by itself, so that two people can edit both. */
export interface Group {
  readonly label: string;
  readonly description: string;
  /** Name of its definition in the published schema. */
  readonly definition: string;
  readonly required?: readonly string[];
  readonly fields: Readonly<Record<string, Part>>;
}

/** The same kind of field under names that the sheet's cells give: inputs and outputs. */
export interface Named {
  readonly description: string;
  readonly each: Field | Group;
  /** What one of them is called; `inner` is the field of it that is meant. */
  words(name: string, inner?: string): string;
}

export type Part = Field | Group | Named;

/** A record for every field of a type of the file format: one that lacks a field does not compile. */
export type FieldsOf<T> = { readonly [K in keyof Required<T>]: Part };

export const isGroup = (part: Part | undefined): part is Group => part !== undefined && 'fields' in part;
export const isNamed = (part: Part | undefined): part is Named => part !== undefined && 'each' in part;
export const isField = (part: Part | undefined): part is Field => part !== undefined && 'schema' in part;

/** Names that reach into the workings of every object: no field is called so. */
export const isReserved = (name: string): boolean =>
  name === '__proto__' || name === 'constructor' || name === 'prototype';

/** What stands under a key of a group; undefined where the format does not know it. */
export const partAt = (of: Part | undefined, key: string): Part | undefined => {
  if (isNamed(of)) return of.each;
  return isGroup(of) && Object.hasOwn(of.fields, key) ? of.fields[key] : undefined;
};

/** What stands at a path of the file form: `limits.lower`, `outputs.close_in.measured.entry`. */
export const partAtPath = (of: Group, path: string): Part | undefined =>
  path.split('.').reduce<Part | undefined>(partAt, of);

export const fieldAtPath = (of: Group, path: string): Field | undefined => {
  const part = partAtPath(of, path);
  return isField(part) ? part : undefined;
};

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Every known field that a record holds, with its path in the file form. */
export function* fieldsIn(record: object, of: Group, prefix = ''): Generator<[string, Field, unknown]> {
  for (const [key, value] of Object.entries(record)) yield* within(value, partAt(of, key), prefix + key);
}

function* within(value: unknown, part: Part | undefined, path: string): Generator<[string, Field, unknown]> {
  if (value === undefined || !part) return;
  if (isField(part)) yield [path, part, value];
  else if (isRecord(value)) {
    for (const [key, inner] of Object.entries(value))
      yield* within(inner, partAt(part, key), `${path}.${key}`);
  }
}

/** What people call the field at a path: `lower limit`, `housing` of an input, `lower limit of close_in` of an output. */
export function wordsAtPath(of: Group, path: string): string {
  const [head = '', name, ...rest] = path.split('.');
  const part = partAt(of, head);
  if (isNamed(part) && name !== undefined) {
    const inner = rest.length > 0 && isGroup(part.each) ? wordsAtPath(part.each, rest.join('.')) : undefined;
    return part.words(name, inner);
  }
  if (isGroup(part)) return name === undefined ? part.label : wordsAtPath(part, [name, ...rest].join('.'));
  return isField(part) ? part.label : path;
}
