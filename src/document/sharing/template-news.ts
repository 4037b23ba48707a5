import { CELL_FIELDS } from '../../../shared/sheet/cell-fields.ts';
import { fieldAtPath } from '../../../shared/sheet/field.ts';
import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import { type CellDifference, differences } from '../differences.ts';
import { flatten, sameValue, unflatten } from '../model/fields.ts';
import { freeName } from '../model/names.ts';
import { toNames, toStored } from '../model/references.ts';
import { textKind } from '../model/texts.ts';

/** A field the template says otherwise now. */
interface NewsField {
  field: string;
  /** What the job says. */
  now: unknown;
  /** What the template says, with the names the job has for its cells. */
  after: unknown;
  /** The job has gone its own way here: it says neither what the template said nor what it says. */
  departs: boolean;
}

/** What the template has changed about one cell since the job was begun. */
export interface News {
  id: string;
  what: CellDifference['what'];
  /** The cell as the job has it; as the template has it where it is new. */
  cell: CellRecord;
  fields: NewsField[];
}

/** The template leaves this field to whoever begins a job from it. */
const isAsked = (cell: CellRecord | undefined, field: string): boolean => {
  if (!cell) return false;
  if (field === 'entry') return cell.fill === true || cell.example !== undefined;
  const fields = flatten(cell, CELL_FIELDS);
  return field.startsWith('inputs.')
    ? fields.has(`examples.${field.slice('inputs.'.length)}`)
    : fields.has(`${field}Example`);
};

/**
 * Whether the template has a say in a field of the job; a field that the format does not know is the template's too. What it
 * asked for is the job's own once it is filled in.
 */
const governed = (
  cell: CellRecord,
  field: string,
  now: unknown,
  authors: readonly (CellRecord | undefined)[],
): boolean =>
  (fieldAtPath(CELL_FIELDS, field)?.template ?? 'kept') === 'kept' &&
  !(field === 'entry' && cell.role === 'measured') &&
  (now === undefined || !authors.some((author) => isAsked(author, field)));

const byId = (file: SheetFile | undefined): Map<string, CellRecord> =>
  new Map(file?.cells.map((cell) => [cell.id, cell]));

/**
 * What a job could take over from its template. Where the template as it was is known, only what changed since; else
 * everything in which the two differ, but for cells the job alone has.
 */
export function newsOf(job: SheetFile, template: SheetFile, base?: SheetFile): News[] {
  const mine = new Map(job.cells.map((cell) => [cell.id, cell]));
  const said = names(template, job);
  const saidThen = names(base ?? job, job);
  const found: News[] = [];
  const [now, then] = [byId(template), byId(base)];
  for (const change of differences(base ?? job, template).cells) {
    const here = mine.get(change.id);
    if (change.what === 'added') {
      if (!here) found.push({ ...change, fields: [] });
      else if (base) push(found, here, fieldsFrom(change.cell, here, said));
    } else if (change.what === 'gone') {
      if (base && here) found.push({ ...change, cell: here, fields: [] });
    } else if (here) {
      const own = flatten(here, CELL_FIELDS);
      const authors = [now.get(change.id), then.get(change.id)];
      const fields = change.fields.flatMap(({ field, before, after }): NewsField[] => {
        const mine = own.get(field);
        const theirs = said(field, after);
        if (!governed(here, field, mine, authors) || sameValue(mine, theirs)) return [];
        return [
          {
            field,
            now: mine,
            after: theirs,
            departs: base !== undefined && !sameValue(mine, saidThen(field, before)),
          },
        ];
      });
      push(found, here, fields);
    }
  }
  return found;
}

const push = (found: News[], cell: CellRecord, fields: NewsField[]): void => {
  if (fields.length > 0) found.push({ id: cell.id, what: 'changed', cell, fields });
};

function fieldsFrom(cell: CellRecord, here: CellRecord, said: Said): NewsField[] {
  const own = flatten(here, CELL_FIELDS);
  return [...flatten(cell, CELL_FIELDS)].flatMap(([field, value]) => {
    const [now, after] = [own.get(field), said(field, value)];
    return !governed(here, field, now, [cell]) || sameValue(now, after)
      ? []
      : [{ field, now, after, departs: true }];
  });
}

type Said = (field: string, value: unknown) => unknown;

/** Texts of one file with the names another one has for the same cells. */
function names(file: SheetFile, other: SheetFile): Said {
  const ids = new Map(file.cells.flatMap(({ id, name }) => (name ? [[name, id] as const] : [])));
  const theirs = new Map(
    [...file.cells, ...other.cells].flatMap(({ id, name }) => (name ? [[id, name] as const] : [])),
  );
  return (field, value) => {
    const kind = textKind(field);
    if (!kind || typeof value !== 'string') return value;
    return toNames(
      toStored(value, kind, (name) => ids.get(name)),
      (id) => theirs.get(id),
    );
  };
}

/** The job with what it takes of the news. Its own cells, readings and names stay. */
export function takeNews(job: SheetFile, template: SheetFile, taken: readonly News[]): SheetFile {
  const said = names(template, job);
  const wanted = new Map(taken.map((news) => [news.id, news]));
  const cells = job.cells.flatMap((cell) => {
    const news = wanted.get(cell.id);
    if (!news) return [cell];
    return news.what === 'gone' ? [] : [withFields(cell, news.fields)];
  });
  const used = new Set(cells.map(({ name }) => name));
  template.cells.forEach((cell, k) => {
    if (wanted.get(cell.id)?.what !== 'added') return;
    const own = Object.fromEntries(flatten(cell, CELL_FIELDS)) as Record<string, unknown>;
    const record = unflatten(
      Object.entries(own).map(([field, value]) => [field, said(field, value)]),
    ) as unknown as CellRecord;
    if (record.name) record.name = freeName(record.name, (name) => used.has(name));
    used.add(record.name);
    cells.splice(placeAfter(cells, template.cells.slice(0, k)), 0, record);
  });
  return { ...job, cells };
}

/** Behind the last of the cells above that the job has, in the template's order. */
function placeAfter(cells: readonly CellRecord[], above: readonly CellRecord[]): number {
  for (const { id } of above.toReversed()) {
    const at = cells.findIndex((cell) => cell.id === id);
    if (at >= 0) return at + 1;
  }
  return 0;
}

function withFields(cell: CellRecord, fields: readonly NewsField[]): CellRecord {
  const all = flatten(cell, CELL_FIELDS);
  for (const { field, after } of fields) {
    if (after === undefined) all.delete(field);
    else all.set(field, after);
  }
  return unflatten(all) as unknown as CellRecord;
}

/** Cells that the template's author locked and in which the job says another thing. */
export function departures(job: SheetFile, template: SheetFile): News[] {
  const locked = new Set(template.cells.filter((cell) => cell.locked).map(({ id }) => id));
  return newsOf(job, template)
    .filter(({ id, what }) => locked.has(id) && what === 'changed')
    .map((news) => ({ ...news, fields: news.fields.filter(({ field }) => field !== 'locked') }))
    .filter(({ fields }) => fields.length > 0);
}
