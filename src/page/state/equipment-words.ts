import type { Equipment } from '../../document/sharing/own-equipment.ts';
import type { Library } from '../../engine/rows/library.ts';
import { writtenOut } from '../kit/decimal-mark.ts';
import { inputTextWords, inputWords } from './input-said.ts';

/** What a gauge, a press or a metal is, in words. */
export const equipmentWords = (
  library: Library | undefined,
  { kind, inputs }: Pick<Equipment, 'kind' | 'inputs'>,
): string =>
  Object.entries(inputs)
    .map(([name, text]) => {
      const said = inputTextWords(library, kind, name, text);
      // A choice says by itself what it is.
      return said === text ? `${inputWords(library, kind, name)} ${writtenOut(text)}` : said;
    })
    .join('; ');

/** Whether it is one of those this page fills in or offers; undefined until its kind is there. */
export const isOfShop = (
  library: Library | undefined,
  { kind, inputs }: Pick<Equipment, 'kind' | 'inputs'>,
): boolean | undefined => {
  const found = library?.kinds.get(kind);
  if (!found) return library && !library.kinds.has(kind) ? false : undefined;
  return Object.keys(inputs).every((name) =>
    found.inputs.some((input) => input.name === name && input.ofShop !== undefined),
  );
};
