import { flag, oneOf, text } from './describe.ts';
import type { Field, FieldsOf, Group } from './field.ts';
import { MAX_LINES, type SheetFile, type SheetUnits, type TitleBlock, VERSION } from './format.ts';
import type { Schema } from './schema.ts';

/** The fields of the title block and the settings of a sheet. As of a line: added here and in `format.ts` alone. */

/** Free text of the title block, which no figure depends on. */
const free = (label: string, description: string, more: Partial<Field> = {}): Field => ({
  label,
  schema: text(description),
  computed: false,
  template: 'kept',
  ...more,
});

const box = (place: number, first = false): Pick<Field, 'box'> => ({ box: { place, first } });

/** Of the one job, or of somebody who works on it. */
const personal: Pick<Field, 'template'> = { template: 'emptied' };

export const TITLE_FIELDS: Group = {
  label: 'title block',
  description: 'Title block (ISO 7200), all free text.',
  definition: 'title',
  required: ['title'],
  fields: {
    title: free('title', 'What the sheet is for.'),
    number: free('sheet number', 'Job or drawing number.', { ...personal, ...box(9) }),
    part: free('part', 'The part or assembly.', { ...personal, ...box(1, true) }),
    machine: free('machine', 'The machine it belongs to.', { ...personal, ...box(2, true) }),
    customer: free('for whom', 'Whom it is for.', { ...personal, ...box(3, true) }),
    material: free('material', 'Material.', box(4)),
    drawnBy: free('drawn by', 'Who worked it out.', { ...personal, ...box(5) }),
    checkedBy: free('checked by', 'Who checked it.', { ...personal, ...box(6) }),
    revision: free('revision', 'Revision.', { ...personal, ...box(8) }),
    date: free('date', 'Date, ISO 8601.', { ...personal, ...box(7) }),
    referenceTemperature: free('reference temperature', 'An entry; 20 degC where it is absent (ISO 1).', {
      computed: true,
    }),
    note: free('note', 'Note.', { noted: true }),
    tags: {
      label: 'marks to find it by',
      schema: { description: 'Words to find it by.', type: 'array', items: { type: 'string' } },
      computed: false,
      template: 'kept',
    },
  } satisfies FieldsOf<TitleBlock>,
};

const units: Group = {
  label: 'units of the sheet',
  description:
    'Units the sheet is typed and shown in. No value depends on them: an entry carries its own unit.',
  definition: 'units',
  required: ['length'],
  fields: {
    length: {
      label: 'lengths shown in',
      schema: oneOf('What a bare length is, and what lengths are shown in.', 'in', 'mm'),
      computed: true,
      template: 'kept',
      shown: true,
      values: { in: 'inches', mm: 'millimetres' },
    },
    temperature: {
      label: 'temperatures shown in',
      schema: oneOf('What a bare temperature is; follows the length when absent.', 'degC', 'degF'),
      computed: true,
      template: 'kept',
      shown: true,
      values: { degC: '°C', degF: '°F' },
    },
    ton: {
      label: 'which ton',
      schema: oneOf('Which ton is meant by ton.', 'short_ton', 'long_ton', 'tonne'),
      computed: true,
      template: 'kept',
      values: { short_ton: 'short ton', long_ton: 'long ton' },
    },
    tenth: {
      label: 'which tenth',
      schema: oneOf('Which tenth is meant by tenth.', 'tenth_in', 'tenth_mm'),
      computed: true,
      template: 'kept',
      values: { tenth_in: '0.0001 in', tenth_mm: '0.1 mm' },
    },
    both: {
      label: 'both systems shown',
      schema: flag('Show the other system beside the preferred one.'),
      computed: false,
      template: 'kept',
      shown: true,
    },
  } satisfies FieldsOf<SheetUnits>,
};

const list = (description: string, items: Schema, maxItems?: number): Schema => ({
  description,
  type: 'array',
  ...(maxItems === undefined ? {} : { maxItems }),
  items,
});

const setting = (label: string, schema: Schema, more: Partial<Field> = {}): Field => ({
  label,
  schema,
  computed: false,
  template: 'kept',
  ...more,
});

export const SHEET_FIELDS: Group = {
  label: 'sheet',
  description:
    'A job sheet or a template. Unknown fields are allowed everywhere and kept. Texts called an entry hold what a person types: a value with its unit, a list of readings, or a formula after an equals sign, in which cells go by their names. The order of the properties here is the order in which files are written.',
  definition: 'sheet',
  required: ['format', 'version', 'title', 'units', 'rule', 'cells'],
  fields: {
    format: setting('format', { description: 'Says that this is a job sheet.', const: 'fitwright-sheet' }),
    version: setting('version', { description: 'Version of the file format.', const: VERSION }),
    needs: setting(
      'what a reader must know',
      list(
        'What a reader must know to judge the sheet rightly. One that does not know every name here must refuse the sheet.',
        { type: 'string' },
      ),
    ),
    template: setting(
      'use as a template',
      flag('True for a template: limits, formulas and notes kept, readings emptied.'),
    ),
    title: TITLE_FIELDS,
    units,
    rule: setting(
      'decision rule of the sheet',
      { description: 'Decision rule of every check that does not name its own.', $ref: '#/$defs/rule' },
      { computed: true },
    ),
    ways: {
      description:
        'The way taken, by what the ways lead to: lines of the others are set aside and count no more. None is taken where it names no way that there is.',
      each: {
        label: 'way taken',
        schema: { type: 'string' },
        computed: true,
        template: 'emptied',
      },
      words: (to) => `way taken to ${to}`,
    },
    from: setting(
      'template it came from',
      {
        description: 'The template this sheet came from.',
        type: 'object',
        required: ['title', 'fingerprint'],
        properties: {
          title: text('Its title.'),
          fingerprint: text('Its fingerprint when this sheet was made from it.'),
        },
      },
      { template: 'emptied' },
    ),
    cells: setting('lines', list('In the order in which they stand.', { $ref: '#/$defs/cell' }, MAX_LINES), {
      computed: true,
    }),
    variants: setting(
      'variants',
      list('Sets of other entries to compare.', {
        description: 'One variant.',
        type: 'object',
        required: ['name', 'entries'],
        properties: {
          name: text('For people.'),
          entries: {
            description: 'Entries that differ, by cell.',
            type: 'object',
            additionalProperties: { type: 'string' },
          },
        },
      }),
    ),
    tables: setting(
      'table values kept',
      list(
        'Table values the sheet was computed with, so that a finished job keeps its numbers when the library moves on.',
        { $ref: '#/$defs/keptValue' },
      ),
      { template: 'emptied' },
    ),
  } satisfies FieldsOf<SheetFile>,
};
