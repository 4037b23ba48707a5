import { CELL_FIELDS } from '../../../shared/sheet/cell-fields.ts';
import { fieldAtPath } from '../../../shared/sheet/field.ts';
import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import { flatten, unflatten } from '../model/fields.ts';

/**
 * What a template does with one text of a line. `asked`: left blank for the next user, the text an example. `follows`: a
 * formula, kept. `figure`: a number, which would stand in the next job as if it were that machine's. `choice`: a thread, a
 * material, a gauge.
 */
export interface TemplateText {
  id: string;
  /** Path in the file form: `entry`, `limits.lower`, `inputs.housing`. */
  field: string;
  text: string;
  is: 'asked' | 'follows' | 'figure' | 'choice';
}

/** Where the example of an emptied field stands. */
const exampleOf = (field: string): string | undefined => {
  if (field === 'entry') return 'example';
  if (field.startsWith('inputs.')) return `examples.${field.slice('inputs.'.length)}`;
  return /(^|\.)limits\.(lower|upper|wear)$/.test(field) ? `${field}Example` : undefined;
};

const EXAMPLE = /^example$|^examples\.|Example$/;

const fieldOfExample = (path: string): string =>
  path === 'example' ? 'entry' : path.replace(/^examples\./, 'inputs.').replace(/Example$/, '');

/** A number other than nothing, with or without a unit: `2.25 in`, `27/64`, `#7`, `M10` of a plain line. */
const isFigure = (text: string): boolean => /\d/.test(text) && !/^[-+]?0*\.?0*(\s*\D*)?$/.test(text.trim());

const kindOf = (field: string, text: string, names: ReadonlySet<string>): TemplateText['is'] => {
  if (text.trimStart().startsWith('=') || names.has(text.trim().split('.')[0]!)) return 'follows';
  const isTyped = !field.startsWith('inputs.') || /^\s*[-+.±\d]/.test(text);
  return isTyped && isFigure(text) ? 'figure' : 'choice';
};

/** Every text of the lines that the next user could take for their own, and what the template does with it, in order. */
export function textsOfTemplate({ cells }: SheetFile): TemplateText[] {
  const names = new Set(cells.flatMap(({ name }) => name ?? []));
  return cells.flatMap((cell) => {
    if (cell.role === 'section' || cell.role === 'remark') return [];
    const fields = flatten(cell, CELL_FIELDS);
    return [...fields].flatMap(([path, value]): TemplateText[] => {
      if (typeof value !== 'string' || value === '') return [];
      const field = EXAMPLE.test(path) ? fieldOfExample(path) : path;
      if (field !== path) return fields.get(field) ? [] : [{ id: cell.id, field, text: value, is: 'asked' }];
      if (exampleOf(path) === undefined || !fieldAtPath(CELL_FIELDS, path)?.reads) return [];
      return [{ id: cell.id, field, text: value, is: kindOf(field, value, names) }];
    });
  });
}

/** A figure with a unit is of that machine; one without may be a factor, a count or a share. */
const hasUnit = (text: string): boolean => /[\p{L}"′″°µ#]/u.test(text.replace(/\(k\s*=.*$/, ''));

/** What is asked for unless the author says otherwise: whatever is asked for already, and every figure with a unit. */
export const askedAtFirst = (texts: readonly TemplateText[]): TemplateText[] =>
  texts.filter(({ is, text }) => is === 'asked' || (is === 'figure' && hasUnit(text)));

/** A reading belongs to the one job: it is never kept. */
export const mustBeAsked = (cell: CellRecord, { field }: Pick<TemplateText, 'field'>): boolean =>
  cell.role === 'measured' && field === 'entry';

export const keyOfText = ({ id, field }: Pick<TemplateText, 'id' | 'field'>): string => `${id} ${field}`;

/** What a template's author says of it. */
export interface Marks {
  /** Keys of texts that the next user is asked for. */
  asked: ReadonlySet<string>;
  /** Lines whose formula and limits are the author's; changing them asks first. */
  locked: ReadonlySet<string>;
  /** Names of variants that stay with this job. */
  left?: ReadonlySet<string>;
}

/** Lines that hold something to fill in or to lock. */
export const markable = ({ role }: CellRecord): boolean => role !== 'section' && role !== 'remark';

function marked(cell: CellRecord, texts: readonly TemplateText[], { asked, locked }: Marks): CellRecord {
  const { fill: _fill, locked: _locked, ...rest } = cell;
  const fields = flatten(rest, CELL_FIELDS);
  let fill = false;
  for (const one of texts) {
    const example = exampleOf(one.field) as string;
    fields.delete(example);
    if (!asked.has(keyOfText(one)) && !mustBeAsked(cell, one)) {
      fields.set(one.field, one.text);
      continue;
    }
    fill ||= !one.field.includes('limits.');
    // A formula is worth keeping: the next user looks at it.
    if (one.is === 'follows') continue;
    fields.delete(one.field);
    fields.set(example, one.text);
  }
  const record = unflatten(fields) as unknown as CellRecord;
  return { ...record, ...(fill && { fill }), ...(locked.has(cell.id) && { locked: true }) };
}

/** A template with its author's marks. */
export function withMarks(template: SheetFile, marks: Marks): SheetFile {
  const texts = new Map<string, TemplateText[]>();
  for (const one of textsOfTemplate(template)) texts.set(one.id, [...(texts.get(one.id) ?? []), one]);
  const { variants, ...rest } = template;
  const taken = variants?.filter(({ name }) => !marks.left?.has(name));
  return {
    ...rest,
    ...(taken && taken.length > 0 ? { variants: taken } : {}),
    cells: template.cells.map((cell) =>
      markable(cell) ? marked(cell, texts.get(cell.id) ?? [], marks) : cell,
    ),
  };
}
