import type { SheetFile } from './format.ts';
import { isObject, type RootSchema, resolve, type Schema } from './schema.ts';
import { sheetSchema } from './sheet-schema.ts';

/** Fields in the order of the schema, then unknown ones and names of the user's own by alphabet. */
const ordered = (value: unknown, reference: Schema | undefined, root: RootSchema): unknown => {
  const schema = reference && resolve(reference, root);
  if (Array.isArray(value)) return value.map((item) => ordered(item, schema?.items, root));
  if (!isObject(value)) return value;
  const known = Object.keys(schema?.properties ?? {}).filter((key) => Object.hasOwn(value, key));
  const others = Object.keys(value).filter((key) => !known.includes(key));
  others.sort((a, b) => (a < b ? -1 : 1));
  return Object.fromEntries(
    [...known, ...others].map((key) => [
      key,
      ordered(
        value[key],
        known.includes(key) ? schema?.properties?.[key] : schema?.additionalProperties,
        root,
      ),
    ]),
  );
};

/** A sheet as a file: two sheets with the same content give the same text, and a small edit a small difference. */
export const writeSheet = (file: SheetFile): string => {
  const schema = sheetSchema();
  return `${JSON.stringify(ordered(file, schema, schema), undefined, 2)}\n`;
};
