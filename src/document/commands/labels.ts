import type { Editing } from '../model/editing.ts';

/** What undo says it takes back, in trade words. */

const FIELDS: Record<string, string> = {
  entry: 'entry',
  tolerance: 'tolerance',
  gauge: 'gauge',
  material: 'material',
  at: 'temperature',
  'limits.lower': 'lower limit',
  'limits.upper': 'upper limit',
  'limits.wear': 'wear limit',
  'limits.metalOn': 'side with metal on',
  'limits.rule': 'decision rule',
  limits: 'limits',
  measured: 'size as measured',
  'measured.entry': 'size as measured',
  'measured.gauge': 'gauge of the size as measured',
  'measured.at': 'temperature of the size as measured',
  'measured.material': 'material of the size as measured',
  'measured.note': 'note to the size as measured',
  issued: 'issued size',
  label: 'label',
  quantity: 'quantity',
  display: 'unit',
  note: 'note',
  locked: 'lock',
  fill: 'mark to fill in',
  example: 'example',
  role: 'role',
  kind: 'kind',
  dismissed: 'answer to a question',
};

export function fieldLabel(e: Editing, id: string, path: string): string {
  const title = e.reading.title(id);
  const [head, name, ...rest] = path.split('.');
  if (head === 'inputs' && name) return `${name} of ${title}`;
  if (head === 'outputs' && name) return `${FIELDS[rest.join('.')] ?? 'settings'} of ${title}.${name}`;
  return `${FIELDS[path] ?? FIELDS[head!] ?? path} of ${title}`;
}

export const linesLabel = (e: Editing, what: string, ids: readonly string[]): string =>
  `${what} of ${ids.length === 1 ? e.reading.title(ids[0]!) : `${ids.length} lines`}`;

const TITLE: Record<string, string> = {
  title: 'title',
  part: 'part',
  machine: 'machine',
  customer: 'customer',
  material: 'material',
  drawnBy: 'drawn by',
  checkedBy: 'checked by',
  revision: 'revision',
  date: 'date',
  number: 'number',
  referenceTemperature: 'reference temperature',
  note: 'note',
  tags: 'tags',
};

export const titleLabel = (field: string): string => `title block: ${TITLE[field] ?? field}`;
