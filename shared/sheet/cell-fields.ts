import { flag, oneOf, text } from './describe.ts';
import type { Field, FieldsOf, Group, Named } from './field.ts';
import type { CellRecord, Limits, Measured, OutputSettings, Way } from './format.ts';
import { ROLE_WORDS } from './role-words.ts';

/** The fields of a line. A field is added here and in `format.ts`, and nowhere else; files are written in this order. */

const limit = (label: string, description: string): Field => ({
  label,
  schema: text(description),
  computed: true,
  template: 'kept',
  refers: 'formula',
  reads: { quantity: 'own', role: 'given' },
});

/** What the next user is asked for: while it is blank, nothing is judged by that side. */
const limitExample = (label: string, description: string): Field => ({
  ...limit(label, description),
  template: 'own',
});

const limits: Group = {
  label: 'limits',
  description: 'Each limit an entry or a formula.',
  definition: 'limits',
  fields: {
    lower: limit('lower limit', 'Lower limit of a new part.'),
    upper: limit('upper limit', 'Upper limit of a new part.'),
    wear: limit('wear limit', 'Limit a part in service may wear to.'),
    lowerExample: limitExample('example of the lower limit', 'What an emptied lower limit might be.'),
    upperExample: limitExample('example of the upper limit', 'What an emptied upper limit might be.'),
    wearExample: limitExample('example of the wear limit', 'What an emptied wear limit might be.'),
    metalOn: {
      label: 'side that can still be cut',
      schema: oneOf(
        'Side on which a miss can still be reworked: a bore small (low), a shaft big (high).',
        'low',
        'high',
      ),
      computed: true,
      template: 'kept',
      values: { low: 'when small', high: 'when big' },
    },
    rule: {
      label: 'decision rule',
      schema: { description: 'Overrides the rule of the sheet.', $ref: '#/$defs/rule' },
      computed: true,
      template: 'kept',
    },
  } satisfies FieldsOf<Limits>,
};

const measured: Group = {
  label: 'size as measured',
  description: 'What was read off the real part.',
  definition: 'measured',
  required: ['entry'],
  fields: {
    entry: {
      label: 'size as measured',
      schema: text('An entry; a list of readings too.'),
      computed: true,
      template: 'emptied',
      refers: 'formula',
      reads: { quantity: 'own', role: 'measured' },
    },
    gauge: {
      label: 'gauge of the size as measured',
      schema: text('Name of the gauge cell.'),
      computed: true,
      template: 'emptied',
      refers: 'name',
    },
    at: {
      label: 'temperature of the size as measured',
      schema: text('Temperature of the part at the reading, an entry.'),
      computed: true,
      template: 'emptied',
      refers: 'formula',
      reads: { quantity: 'temperature', role: 'given' },
    },
    material: {
      label: 'material of the size as measured',
      schema: text('Name of the material cell of the part, for the correction to reference temperature.'),
      computed: true,
      template: 'emptied',
      refers: 'name',
    },
    note: {
      label: 'note to the size as measured',
      schema: text('Note.'),
      computed: false,
      template: 'emptied',
      noted: true,
    },
  } satisfies FieldsOf<Measured>,
};

const display: Field = {
  label: 'unit shown',
  schema: text('Unit to show it in.'),
  computed: false,
  template: 'own',
  shown: true,
};

const displayOther: Field = {
  label: 'unit shown in the other lengths',
  schema: text(
    "Unit it was shown in when the sheet's lengths were in the other system, where the way back does not lead to it.",
  ),
  computed: false,
  template: 'own',
  shown: true,
};

const outputs: Named = {
  description: 'Library cells: settings by output.',
  each: {
    label: 'settings',
    description: 'Settings of one output of a library cell.',
    definition: 'output',
    fields: { limits, measured, display, displayOther } satisfies FieldsOf<OutputSettings>,
  },
  words: (name, inner) => `${inner ?? 'settings'} of ${name}`,
};

const way: Group = {
  label: 'way',
  description:
    'One of several ways to the same end: the line counts while that way is taken, or none is yet.',
  definition: 'way',
  fields: {
    to: {
      label: 'what the ways lead to',
      schema: text('What the ways lead to; the same in every line of them.'),
      computed: true,
      template: 'kept',
    },
    by: {
      label: 'which way',
      schema: text('Which of the ways the line belongs to.'),
      computed: true,
      template: 'kept',
    },
  } satisfies FieldsOf<Way>,
};

export const CELL_FIELDS: Group = {
  label: 'line',
  description: 'One line or block of the sheet.',
  definition: 'cell',
  required: ['id', 'role'],
  fields: {
    id: {
      label: 'id',
      schema: { ...text('Tells cells apart; unique in the file.'), minLength: 1 },
      computed: true,
      template: 'kept',
    },
    role: {
      label: 'role',
      schema: oneOf(
        'How the cell comes by its value: given, measured, chosen, worked out, a cell of the library; or a heading, or text.',
        'given',
        'measured',
        'chosen',
        'worked',
        'cell',
        'section',
        'remark',
      ),
      computed: true,
      template: 'kept',
      values: ROLE_WORDS,
    },
    name: { label: 'name', schema: text('Used in formulas.'), computed: false, template: 'own' },
    label: { label: 'label', schema: text('For people.'), computed: false, template: 'kept' },
    kind: {
      label: 'kind of cell',
      schema: text('Library cells: which one.'),
      computed: true,
      template: 'kept',
    },
    edition: {
      label: 'edition of the cell',
      schema: { description: 'Library cells: edition of the kind.', type: 'integer', minimum: 1 },
      computed: true,
      template: 'kept',
    },
    quantity: {
      label: 'kind of quantity',
      schema: text('Kind of quantity: length, force and so on.'),
      computed: true,
      template: 'kept',
    },
    entry: {
      label: 'entry',
      schema: text(
        'What was typed, with names. Readings of one station are separated by ; and stations by |.',
      ),
      computed: true,
      template: 'kept',
      refers: 'formula',
      reads: { quantity: 'own', role: 'own' },
    },
    tolerance: {
      label: 'tolerance',
      schema: text('How well a chosen size can be cut.'),
      computed: true,
      template: 'kept',
      refers: 'formula',
      reads: { quantity: 'own', role: 'given' },
    },
    gauge: {
      label: 'gauge',
      schema: text('Name of the gauge cell it was read with.'),
      computed: true,
      template: 'kept',
      refers: 'name',
    },
    at: {
      label: 'temperature at the reading',
      schema: text('Temperature of the part when it was read, an entry; absent at reference temperature.'),
      computed: true,
      template: 'emptied',
      refers: 'formula',
      reads: { quantity: 'temperature', role: 'given' },
    },
    material: {
      label: 'material',
      schema: text('Name of the material cell of the part, for the correction of a reading.'),
      computed: true,
      template: 'kept',
      refers: 'name',
    },
    inputs: {
      description: 'Library cells: entries by input.',
      each: {
        label: 'input',
        schema: { type: 'string' },
        computed: true,
        template: 'kept',
        refers: 'input',
        reads: { quantity: 'own', role: 'own' },
      },
      words: (name) => name,
    },
    outputs,
    limits,
    measured,
    issued: {
      label: 'released size',
      schema: text('The dimension as sent to the machine, an entry: re-planning does not move it.'),
      computed: true,
      template: 'emptied',
      refers: 'formula',
      reads: { quantity: 'own', role: 'given' },
    },
    display,
    displayOther,
    note: { label: 'note', schema: text('Note.'), computed: false, template: 'kept', noted: true },
    basis: {
      label: 'what it follows by',
      schema: oneOf(
        'What the author says of how far it proves anything: the formula follows by geometry alone (geometry), or it is a size of measuring equipment (equipment).',
        'geometry',
        'equipment',
      ),
      computed: true,
      template: 'kept',
      values: { geometry: 'geometry alone', equipment: 'measuring equipment' },
    },
    way,
    locked: {
      label: 'lock',
      schema: flag("Formula and limits are the template author's; changing them asks first."),
      computed: false,
      template: 'kept',
    },
    solved: {
      label: 'solving of the ring',
      schema: flag(
        'Its formula, or that of an input of a library cell, may lead back to it: the size is solved so that what comes out is what goes in.',
      ),
      computed: true,
      template: 'kept',
    },
    fill: {
      label: 'mark to fill in',
      schema: flag('In a template: must be filled in by the next user.'),
      computed: false,
      template: 'own',
    },
    example: {
      label: 'example',
      schema: text('What an emptied cell of a template might hold.'),
      computed: false,
      template: 'own',
      refers: 'formula',
      reads: { quantity: 'own', role: 'own' },
    },
    examples: {
      description: 'Library cells: what emptied inputs might hold.',
      each: {
        label: 'example',
        schema: { type: 'string' },
        computed: false,
        template: 'own',
        refers: 'input',
        reads: { quantity: 'own', role: 'own' },
      },
      words: (name) => `example of ${name}`,
    },
    dismissed: {
      label: 'answers to questions',
      schema: {
        description: 'Slips the user has answered.',
        type: 'array',
        items: {
          description: 'One answer.',
          type: 'object',
          required: ['slip', 'text'],
          properties: { slip: text('Key of the slip.'), text: text('The entry it was asked about.') },
        },
      },
      computed: false,
      template: 'own',
    },
  } satisfies FieldsOf<CellRecord>,
};
