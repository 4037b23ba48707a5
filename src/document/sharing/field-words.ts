/** What the fields of a sheet are called where two states of it are compared, by field in the file form. */

const CELL: Readonly<Record<string, string>> = {
  role: 'role',
  name: 'name',
  label: 'label',
  quantity: 'kind of quantity',
  entry: 'entry',
  tolerance: 'tolerance',
  gauge: 'gauge',
  at: 'temperature at the reading',
  material: 'material',
  'limits.lower': 'lower limit',
  'limits.upper': 'upper limit',
  'limits.wear': 'wear limit',
  'limits.metalOn': 'side with metal on',
  'limits.rule': 'decision rule of the line',
  display: 'unit shown',
  displayOther: 'unit shown in the other lengths',
  'measured.entry': 'size as measured',
  'measured.gauge': 'gauge of the size as measured',
  'measured.at': 'temperature of the size as measured',
  'measured.material': 'material of the size as measured',
  'measured.note': 'note to the size as measured',
  issued: 'issued size',
  note: 'note',
  locked: 'lock',
  fill: 'mark to fill in',
  example: 'example',
  kind: 'kind of cell',
  edition: 'edition of the cell',
  dismissed: 'answers to questions',
};

const SHEET: Readonly<Record<string, string>> = {
  'title.title': 'title',
  'title.part': 'part',
  'title.machine': 'machine',
  'title.customer': 'for whom',
  'title.material': 'material',
  'title.drawnBy': 'drawn by',
  'title.checkedBy': 'checked by',
  'title.revision': 'revision',
  'title.date': 'date',
  'title.number': 'sheet number',
  'title.referenceTemperature': 'reference temperature',
  'title.note': 'note of the title block',
  'title.tags': 'marks to find it by',
  'units.length': 'lengths shown in',
  'units.temperature': 'temperatures shown in',
  'units.ton': 'which ton',
  'units.tenth': 'which tenth',
  'units.both': 'both systems shown',
  rule: 'decision rule',
  from: 'template it came from',
  template: 'use as a template',
  variants: 'variants',
  tables: 'table values kept',
};

const METAL: Readonly<Record<string, string>> = { low: 'when small', high: 'when big' };

/** `lower limit`, `housing` for an input, `lower limit of close_in` for an output. */
export function fieldWords(field: string): string {
  const [head, name, ...rest] = field.split('.');
  if ((head === 'inputs' || head === 'examples') && name)
    return head === 'inputs' ? name : `example of ${name}`;
  if (head === 'outputs' && name) return `${CELL[rest.join('.')] ?? 'settings'} of ${name}`;
  return CELL[field] ?? field;
}

export const sheetFieldWords = (field: string): string => SHEET[field] ?? field;

/** A value of a field for people. */
export function valueWords(value: unknown, field = ''): string {
  if (value === undefined || value === '' || value === false) return 'nothing';
  if (value === true) return 'yes';
  if (typeof value === 'number') return String(value);
  if (typeof value === 'string')
    return field.endsWith('metalOn') && Object.hasOwn(METAL, value) ? METAL[value]! : value;
  if (Array.isArray(value) && value.every((item) => typeof item === 'string')) return value.join(', ');
  if (Array.isArray(value)) return `${value.length} of them`;
  if (typeof value === 'object' && value !== null && 'title' in value) return String(value.title);
  return 'set';
}
