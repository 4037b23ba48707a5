import { CELL_FIELDS } from './cell-fields.ts';
import { oneOf, text } from './describe.ts';
import { type Group, isGroup, isNamed, type Part } from './field.ts';
import { VERSION } from './format.ts';
import type { RootSchema, Schema } from './schema.ts';
import { SHEET_FIELDS } from './sheet-fields.ts';

/** JSON Schema of the sheet file, made from the records of its fields. `sheet.schema.json` holds it for other programs. */

const number = (description: string): Schema => ({ description, type: 'number' });

const RULE = oneOf(
  'How the guard band of a check is taken: worst case; ISO 14253-1:2013, expanded uncertainty k = 2; the default of ISO 14253-1:2017, 95 % conformance probability; or no allowance for measuring error.',
  'worst-case',
  'iso14253-2013',
  'iso14253-2017',
  'simple',
);

const KEPT_VALUE: Schema = {
  description: 'One value of a table, SI.',
  type: 'object',
  required: ['table', 'key', 'column', 'value', 'low', 'high'],
  properties: {
    table: text('Table.'),
    key: text('Row.'),
    column: text('Column.'),
    value: number('Value.'),
    low: number('Low end of its range.'),
    high: number('High end of its range.'),
  },
};

type Definitions = Record<string, Schema>;

function partSchema(part: Part, definitions: Definitions): Schema {
  if (isNamed(part)) {
    return {
      description: part.description,
      type: 'object',
      additionalProperties: partSchema(part.each, definitions),
    };
  }
  if (!isGroup(part)) return part.schema;
  definitions[part.definition] ??= groupSchema(part, definitions);
  return { $ref: `#/$defs/${part.definition}` };
}

const groupSchema = ({ description, required, fields }: Group, definitions: Definitions): Schema => ({
  description,
  type: 'object',
  ...(required && { required }),
  properties: Object.fromEntries(
    Object.entries(fields).map(([name, part]) => [name, partSchema(part, definitions)]),
  ),
});

/** Made anew each time, which costs little beside reading a file. */
export const sheetSchema = (): RootSchema => {
  const definitions: Definitions = {};
  const sheet = groupSchema(SHEET_FIELDS, definitions);
  definitions.rule = RULE;
  partSchema(CELL_FIELDS, definitions);
  definitions.keptValue = KEPT_VALUE;
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: `urn:fitwright:sheet:${VERSION}`,
    title: `Job sheet, version ${VERSION}`,
    ...sheet,
    $defs: definitions,
  };
};
