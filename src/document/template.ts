import { CELL_FIELDS } from '../../shared/sheet/cell-fields.ts';
import { isField, isGroup, isNamed, type Part, partAt } from '../../shared/sheet/field.ts';
import type { CellRecord, SheetFile, TitleBlock } from '../../shared/sheet/format.ts';
import { isObject } from '../../shared/sheet/schema.ts';
import { SHEET_FIELDS } from '../../shared/sheet/sheet-fields.ts';

/** A text that a template does not take over from the job. */
export interface Emptied {
  /** Of the cell; absent for a field of the sheet. */
  id?: string;
  /** Path in the file form: `entry`, `outputs.close_in.measured.entry`, `title.customer`. */
  field: string;
  text: string;
}

/**
 * A template from a job: labels, formulas, limits, choices, sources and notes stay; readings, sizes as cut and issued
 * and the personal fields go (see `template` in `shared/sheet/field.ts`). An emptied reading is marked to fill in and stays as the example. The job is not changed.
 *
 * @param isRead tells which inputs of a kind of library cell are read off the part.
 * @returns the template and the list of what it leaves out, to be shown before it is saved.
 */
export function templateOf(
  job: SheetFile,
  isRead: (kind: string, input: string) => boolean,
): { file: SheetFile; emptied: Emptied[] } {
  const { variants, ...whole } = structuredClone(job);
  const emptied: Emptied[] = [];
  const sheet = withoutEmptied(whole, SHEET_FIELDS, emptied) as typeof whole;
  const cells = sheet.cells.map((cell) =>
    withAnswers(emptyInputs(emptyCell(cell, emptied), isRead, emptied), cell.dismissed),
  );
  const file: SheetFile = { ...sheet, template: true, cells };
  // A variant that sets what the template leaves to be filled in would set it behind the next user's back.
  const read = new Set(cells.filter((cell) => cell.fill && cell.name).map((cell) => cell.name));
  if (variants) {
    file.variants = variants.map((variant) => ({
      ...variant,
      entries: Object.fromEntries(Object.entries(variant.entries).filter(([at]) => !read.has(at))),
    }));
  }
  return { file, emptied };
}

/**
 * A record without the fields that belong to the one job; their texts go to `emptied`. A group that loses a field it must
 * have goes as a whole.
 */
function withoutEmptied(
  record: object,
  of: Part,
  emptied: Emptied[],
  cell: { id?: string } = {},
  prefix = '',
): object | undefined {
  const kept: Array<[string, unknown]> = [];
  const lost = new Set<string>();
  for (const [key, value] of Object.entries(record)) {
    const part = partAt(of, key);
    const field = prefix + key;
    if (isField(part) && part.template === 'emptied') {
      if (typeof value === 'string' && value !== '') emptied.push({ ...cell, field, text: value });
      lost.add(key);
    } else if (part && !isField(part) && isObject(value)) {
      const inner = withoutEmptied(value, part, emptied, cell, `${field}.`);
      if (inner) kept.push([key, inner]);
    } else kept.push([key, value]);
  }
  if (isGroup(of) && of.required?.some((key) => lost.has(key))) return undefined;
  if (isNamed(of) && kept.length === 0 && lost.size > 0) return undefined;
  return Object.fromEntries(kept);
}

function emptyCell(cell: CellRecord, emptied: Emptied[]): CellRecord {
  const { dismissed: _dismissed, ...rest } = cell;
  const { id, entry } = rest;
  const isReading = cell.role === 'measured';
  if (isReading && entry) emptied.push({ id, field: 'entry', text: entry });
  const kept = withoutEmptied(rest, CELL_FIELDS, emptied, { id }) as CellRecord;
  if (!isReading) return kept;
  delete kept.entry;
  return { ...kept, ...(entry && { example: entry }), fill: true };
}

/** The answers to questions about sizes that still stand there; those about readings, and what depends on them, go with them. */
function withAnswers(cell: CellRecord, answers: CellRecord['dismissed']): CellRecord {
  const standing = new Set([cell.entry, cell.tolerance, ...Object.values(cell.inputs ?? {})]);
  const dismissed = answers?.filter(({ text }) => standing.has(text) && !/^\s*=/.test(text)) ?? [];
  return dismissed.length > 0 ? { ...cell, dismissed } : cell;
}

/** A number, not the name or the formula by which an input follows another line. */
const isNumber = (text: string): boolean => /^\s*[-+.\d]/.test(text);

function emptyInputs(
  cell: CellRecord,
  isRead: (kind: string, input: string) => boolean,
  emptied: Emptied[],
): CellRecord {
  const { id, kind, inputs } = cell;
  if (kind === undefined || !inputs) return cell;
  const kept = { ...inputs };
  const examples = { ...cell.examples };
  for (const [name, text] of Object.entries(inputs)) {
    if (!isNumber(text) || !isRead(kind, name)) continue;
    emptied.push({ id, field: `inputs.${name}`, text });
    examples[name] = text;
    delete kept[name];
  }
  return Object.keys(kept).length === Object.keys(inputs).length ? cell : { ...cell, inputs: kept, examples };
}

/** A job from a template, which it names with its fingerprint. The cells keep their ids, so the two can be compared. */
export function jobOf(template: SheetFile, fingerprint: string, title: Partial<TitleBlock> = {}): SheetFile {
  const { template: _template, ...sheet } = structuredClone(template);
  return {
    ...sheet,
    title: { ...sheet.title, ...title },
    from: { title: template.title.title, fingerprint },
  };
}
