import { fingerprint } from '../../shared/sheet/fingerprint.ts';
import type { CellRecord, SheetFile, TitleBlock } from '../../shared/sheet/format.ts';

/** A text that a template does not take over from the job. */
export interface Emptied {
  /** Of the cell; absent for a field of the title block. */
  id?: string;
  /** Field in the file form: `entry`, `measured.entry`, `outputs.close_in.measured.entry`, `customer`. */
  field: string;
  text: string;
}

/** What belongs to the one job and the people in it. */
const PERSONAL = ['customer', 'drawnBy', 'checkedBy', 'revision', 'date', 'number'] as const;

/**
 * A template from a job: labels, formulas, limits, choices, sources and notes stay; readings, sizes as cut and issued
 * and the personal fields go. An emptied reading is marked to fill in and stays as the example. The job is not changed.
 *
 * @param isRead tells which inputs of a kind of library cell are read off the part.
 * @returns the template and the list of what it leaves out, to be shown before it is saved.
 */
export function templateOf(
  job: SheetFile,
  isRead: (kind: string, input: string) => boolean,
): { file: SheetFile; emptied: Emptied[] } {
  const { from: _from, tables: _tables, variants, ...sheet } = structuredClone(job);
  const emptied: Emptied[] = [];
  const title: TitleBlock = { ...sheet.title };
  for (const field of PERSONAL) {
    const text = title[field];
    if (text) emptied.push({ field, text });
    delete title[field];
  }
  const cells = sheet.cells.map((cell) =>
    withAnswers(emptyInputs(emptyCell(cell, emptied), isRead, emptied), cell.dismissed),
  );
  const file: SheetFile = { ...sheet, template: true, title, cells };
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

function emptyCell(cell: CellRecord, emptied: Emptied[]): CellRecord {
  const { measured, issued, dismissed: _dismissed, ...kept } = cell;
  const { id } = cell;
  if (measured?.entry) emptied.push({ id, field: 'measured.entry', text: measured.entry });
  if (issued) emptied.push({ id, field: 'issued', text: issued });
  if (cell.role === 'measured') {
    if (cell.entry) {
      emptied.push({ id, field: 'entry', text: cell.entry });
      kept.example = cell.entry;
    }
    delete kept.entry;
    delete kept.at;
    kept.fill = true;
  }
  if (cell.outputs) {
    kept.outputs = Object.fromEntries(
      Object.entries(cell.outputs).map(([name, { measured: read, ...output }]) => {
        if (read?.entry) emptied.push({ id, field: `outputs.${name}.measured.entry`, text: read.entry });
        return [name, output];
      }),
    );
  }
  return kept;
}

/** The answers to questions about sizes that still stand there; those about readings, and what hangs on them, go with them. */
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
export function jobOf(template: SheetFile, title: Partial<TitleBlock> = {}): SheetFile {
  const { template: _template, ...sheet } = structuredClone(template);
  return {
    ...sheet,
    title: { ...sheet.title, ...title },
    from: { title: template.title.title, fingerprint: fingerprint(template) },
  };
}
