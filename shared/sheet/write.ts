import type { SheetFile } from './format.ts';
import { isObject, resolve, type Schema, sheetSchema } from './schema.ts';

/** Fields in the order of the schema, then unknown ones and names of the user's own by alphabet. */
const ordered = (value: unknown, reference: Schema | undefined): unknown => {
  const schema = reference && resolve(reference);
  if (Array.isArray(value)) return value.map((item) => ordered(item, schema?.items));
  if (!isObject(value)) return value;
  const known = Object.keys(schema?.properties ?? {}).filter((key) => Object.hasOwn(value, key));
  const others = Object.keys(value).filter((key) => !known.includes(key));
  others.sort((a, b) => (a < b ? -1 : 1));
  return Object.fromEntries(
    [...known, ...others].map((key) => [
      key,
      ordered(value[key], known.includes(key) ? schema?.properties?.[key] : schema?.additionalProperties),
    ]),
  );
};

/** A sheet as a file: two sheets with the same content give the same text, and a small edit a small difference. */
export const writeSheet = (file: SheetFile): string =>
  `${JSON.stringify(ordered(file, sheetSchema), undefined, 2)}\n`;
