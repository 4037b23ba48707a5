import { cleaned, isFormula, type Top, treeOf } from './grammar/tree.ts';
import { sizeProblem } from './syntax/size.ts';
import { edited } from './values/reading.ts';

/**
 * Stored text as it is shown to and typed by somebody who writes a decimal comma; read back with `decimal: ','` it gives
 * the same stored text. Only numbers change.
 */
export const toDecimalComma = (text: string, top: Top = isFormula(text) ? 'Formula' : 'Literal'): string => {
  if (sizeProblem(text)) return text;
  const edits: { from: number; to: number; insert: string }[] = [];
  treeOf(top, cleaned(text)).tree.iterate({
    enter: ({ name, from, to }) => {
      const point = name === 'Number' ? text.slice(from, to).indexOf('.') : -1;
      if (point >= 0) edits.push({ from: from + point, to: from + point + 1, insert: ',' });
    },
  });
  return edited(text, edits);
};
