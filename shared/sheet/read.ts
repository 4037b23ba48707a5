import { type Problem, problem } from '../problem.ts';
import { CELL_FIELDS } from './cell-fields.ts';
import { hasUnseen, looks, mixesScripts, revealed, wellFormed } from './characters.ts';
import { isField, isReserved, type Part, partAt } from './field.ts';
import { type CellRecord, FORMAT, MAX_CHARACTERS, type SheetFile, VERSION } from './format.ts';
import { faultsOf, isObject, type RootSchema, resolve, type Schema } from './schema.ts';
import { SHEET_FIELDS } from './sheet-fields.ts';
import { sheetSchema } from './sheet-schema.ts';
import { WAYS, withNeeds } from './ways.ts';

export interface ReadSheet {
  file: SheetFile;
  /** What the user should know: read all the same. */
  warnings: string[];
  /** Paths of fields that this edition does not know or left out, outside the title block: of no part in any figure. */
  unknown: string[];
}

const MAX_DEPTH = 32;
const SHOWN = 3;
/** Of fields that nobody knows, which are told by name. */
const NAMED = 40;

/** What a sheet may need of its reader (see `needs` of the format) and this one knows. */
const UNDERSTOOD: ReadonlySet<string> = new Set([WAYS]);

/** Deepest nesting of a JSON text, strings skipped; told before it is parsed. */
const depthOf = (text: string): number => {
  let depth = 0;
  let deepest = 0;
  let inText = false;
  for (let i = 0; i < text.length; i += 1) {
    const c = text[i];
    if (inText) {
      if (c === '\\') i += 1;
      else if (c === '"') inText = false;
    } else if (c === '"') inText = true;
    else if (c === '[' || c === '{') deepest = Math.max(deepest, ++depth);
    else if (c === ']' || c === '}') depth -= 1;
  }
  return deepest;
};

interface Found {
  dropped: string[];
  unseen: string[];
}

/**
 * The same data in fresh objects, without reserved names where they would be fields: texts may stand under any name that the
 * sheet itself gives (`ways`). `found` collects the paths concerned.
 */
const cleaned = (
  value: unknown,
  reference: Schema | undefined,
  root: RootSchema,
  path: string,
  found: Found,
): unknown => {
  if (typeof value === 'string') {
    const sound = wellFormed(value);
    if (sound !== value || hasUnseen(value)) found.unseen.push(path);
    return sound;
  }
  const schema = reference && resolve(reference, root);
  if (Array.isArray(value))
    return value.map((item, i) => cleaned(item, schema?.items, root, `${path}[${i}]`, found));
  if (!isObject(value)) return value;
  const entries: Array<[string, unknown]> = [];
  for (const [key, item] of Object.entries(value)) {
    const below = path ? `${path}.${key}` : key;
    const known = schema?.properties && Object.hasOwn(schema.properties, key);
    const inner = known ? schema.properties?.[key] : schema?.additionalProperties;
    if (isReserved(key) && !(inner?.type === 'string' && typeof item === 'string')) found.dropped.push(below);
    else {
      if (hasUnseen(key)) found.unseen.push(below);
      entries.push([wellFormed(key), cleaned(item, inner, root, below, found)]);
    }
  }
  // Its fields are defined and not assigned: a name such as `__proto__` stays data.
  return Object.fromEntries(entries);
};

const some = (items: readonly string[], most = SHOWN): string =>
  items.slice(0, most).join(', ') + (items.length > most ? ` and ${items.length - most} more` : '');

/** Each field that nobody knows by the first place where it stands: in a thousand lines it is one. */
const alike = (paths: readonly string[]): string[] => {
  const found = new Map<string, { first: string; more: number }>();
  for (const path of paths) {
    const field = path.replace(/\[\d+\]/g, '[]');
    const before = found.get(field);
    if (before) before.more += 1;
    else found.set(field, { first: revealed(path).slice(0, 80), more: 0 });
  }
  return [...found.values()].map(({ first, more }) =>
    more > 0 ? `${first} (and in ${more} more ${more === 1 ? 'place' : 'places'})` : first,
  );
};

const place = (text: string, message: string): string => {
  const at = /position (\d+)/.exec(message)?.[1];
  if (at === undefined) return '';
  const before = text.slice(0, Number(at)).split('\n');
  return ` (line ${before.length}, column ${(before.at(-1) as string).length + 1})`;
};

const parse = (text: string): { value: unknown } | Problem => {
  if (text.length > MAX_CHARACTERS)
    return problem(
      'too-big',
      `The file has ${(text.length / 1e6).toFixed(1)} MB; a sheet has at most ${MAX_CHARACTERS / 1e6} MB.`,
    );
  const depth = depthOf(text);
  if (depth > MAX_DEPTH)
    return problem('too-big', `The file nests ${depth} levels deep; a sheet has at most ${MAX_DEPTH}.`);
  if (text.trim() === '') return problem('syntax', 'The file is empty.');
  try {
    return { value: JSON.parse(text) };
  } catch (error) {
    return problem(
      'syntax',
      `The file is damaged or is no job sheet: it is not JSON${place(text, String(error))}.`,
    );
  }
};

/** Whether this is a sheet at all, and one of a version that can be read. */
const recognise = (value: unknown): Problem | undefined => {
  if (!isObject(value)) return problem('syntax', 'This is not a job sheet: the file holds no fields.');
  if (value.format !== FORMAT) {
    const said =
      value.format === undefined ? 'is missing' : `is ${JSON.stringify(value.format)?.slice(0, 40)}`;
    return problem('syntax', `This is not a job sheet: its field "format" ${said}; it must be "${FORMAT}".`, {
      field: 'format',
    });
  }
  if (typeof value.version === 'number' && value.version > VERSION)
    return problem(
      'syntax',
      `This sheet was written by a newer edition of the program (file version ${value.version}); this one reads up to version ${VERSION}. Open it with the newer edition.`,
      { field: 'version' },
    );
  const needs = Array.isArray(value.needs) ? value.needs : [];
  const lacking = needs.filter((name) => typeof name !== 'string' || !UNDERSTOOD.has(name));
  if (lacking.length > 0)
    return problem(
      'syntax',
      `This sheet needs what this edition does not know (${some(lacking.map((name) => JSON.stringify(name).slice(0, 40)))}): judged without it, a verdict could be wrong. Open it with a newer edition.`,
      { field: 'needs' },
    );
  return undefined;
};

/** Brings a sheet of an older version up to the present one. Version 2 reads all that version 1 says, and says it so. */
const upgraded = (value: unknown): unknown =>
  isObject(value) && value.version === 1 ? { ...value, version: VERSION } : value;

/** Gives the second cell with the same id an id of its own: formulas go by name, so nothing depends on it. */
const distinctIds = (cells: readonly CellRecord[], warnings: string[]): CellRecord[] => {
  const used = new Set(cells.map((cell) => cell.id));
  const seen = new Set<string>();
  return cells.map((cell, i) => {
    if (!seen.has(cell.id)) {
      seen.add(cell.id);
      return cell;
    }
    let n = 2;
    while (used.has(`${cell.id}-${n}`)) n += 1;
    const id = `${cell.id}-${n}`;
    used.add(id);
    seen.add(id);
    warnings.push(`Cell ${i + 1} had the same id as an earlier one (${cell.id}); it was given the id ${id}.`);
    return { ...cell, id };
  });
};

const nameWarnings = (cells: readonly CellRecord[]): string[] => {
  const warnings: string[] = [];
  const byLooks = new Map<string, { name: string; at: number }>();
  for (const [i, { name }] of cells.entries()) {
    if (!name) continue;
    const first = byLooks.get(looks(name));
    if (first?.name === name)
      warnings.push(
        `Cells ${first.at} and ${i + 1} are both named "${name}": formulas cannot tell them apart. Rename one.`,
      );
    else if (first)
      warnings.push(
        `The names of cells ${first.at} and ${i + 1} look alike ("${revealed(name)}") but are not the same. Rename one.`,
      );
    else byLooks.set(looks(name), { name, at: i + 1 });
    if (mixesScripts(name))
      warnings.push(
        `The name of cell ${i + 1}, "${revealed(name)}", mixes Latin letters with others that look like them.`,
      );
  }
  return warnings;
};

/** What stands in a field that is no text (variants, answers, table values) and is not in its schema. */
const unknownBy = (value: unknown, reference: Schema, path: string): string[] => {
  const schema = resolve(reference, sheetSchema());
  if (Array.isArray(value))
    return schema.items
      ? value.flatMap((item, i) => unknownBy(item, schema.items as Schema, `${path}[${i}]`))
      : [];
  const { properties } = schema;
  if (!isObject(value) || !properties || schema.additionalProperties) return [];
  return Object.entries(value).flatMap(([key, inner]) => {
    const known = Object.hasOwn(properties, key) ? properties[key] : undefined;
    return known ? unknownBy(inner, known, `${path}.${key}`) : [`${path}.${key}`];
  });
};

const unknownIn = (record: object, of: Part, path: string): string[] =>
  Object.entries(record).flatMap(([key, value]) => {
    const part = partAt(of, key);
    const below = path ? `${path}.${key}` : key;
    if (!part) return [below];
    // Lines are looked at one by one, as the groups that they are.
    if (isField(part)) return key === 'cells' ? [] : unknownBy(value, part.schema, below);
    return isObject(value) ? unknownIn(value, part, below) : [];
  });

const unknownFields = (file: SheetFile): string[] => [
  ...unknownIn(file, SHEET_FIELDS, ''),
  ...file.cells.flatMap((cell, i) => unknownIn(cell, CELL_FIELDS, `cells[${i}]`)),
];

/**
 * Reads the text of a sheet file. Unknown fields are kept and named. A problem says what is wrong and where; warnings tell of what
 * was read but deserves a look: doubled ids and names, unseen and look-alike characters, fields that were dropped.
 */
export const readSheet = (text: string): ReadSheet | Problem => {
  const parsed = parse(text.startsWith('\ufeff') ? text.slice(1) : text);
  if (!('value' in parsed)) return parsed;
  const refused = recognise(parsed.value);
  if (refused) return refused;

  const found: Found = { dropped: [], unseen: [] };
  const schema = sheetSchema();
  const value = cleaned(upgraded(parsed.value), schema, schema, '', found);
  const faults = faultsOf(value, schema);
  const [first] = faults;
  if (first) {
    const words = some(faults.map((fault) => `${fault.path || 'the file'} ${fault.message}`));
    return problem(first.kind, `The sheet cannot be read: ${words}.`, { field: first.path });
  }

  const file = value as SheetFile;
  const warnings: string[] = [];
  if (found.dropped.length > 0)
    warnings.push(`Left out, because a sheet has no such fields: ${some(alike(found.dropped), NAMED)}.`);
  if (found.unseen.length > 0)
    warnings.push(
      `Characters that cannot be seen or that turn the writing direction stand in ${some(found.unseen)}.`,
    );
  const unknown = unknownFields(file);
  if (unknown.length > 0)
    warnings.push(
      `This edition does not know these fields; they are kept, and no figure or verdict goes by them: ${some(alike(unknown), NAMED)}.`,
    );
  const cells = distinctIds(file.cells, warnings);
  warnings.push(...nameWarnings(cells));
  return {
    file: withNeeds({ ...file, cells }),
    warnings,
    unknown: [...unknown, ...found.dropped].filter((path) => !path.startsWith('title.')),
  };
};
