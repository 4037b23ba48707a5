/** A function whose parentheses hold the caret. */
export interface Call {
  name: string;
  /** Where its name begins, and where its parenthesis opens, in characters. */
  from: number;
  open: number;
  /** Which argument the caret is in, from 0. */
  argument: number;
}

const NAME = /[\p{L}_][\p{L}\p{M}\p{N}_]*$/u;

/**
 * The innermost function called around a place of a formula, as far as it is typed: what stands behind the place may
 * still be missing. An inch mark stands behind a digit; any other quote opens or closes a text.
 */
export const callAt = (text: string, at: number): Call | undefined => {
  const open: Call[] = [];
  let quoted = false;
  for (let i = 0; i < at; i++) {
    const sign = text[i];
    if (sign === '"' && (quoted || !/\d\s*$/.test(text.slice(0, i)))) quoted = !quoted;
    if (quoted) continue;
    if (sign === '(') {
      const name = NAME.exec(text.slice(0, i))?.[0] ?? '';
      open.push({ name, from: i - name.length, open: i, argument: 0 });
    } else if (sign === ')') open.pop();
    else if (sign === ';' && open.length > 0) open.at(-1)!.argument += 1;
  }
  return open.findLast(({ name }) => name !== '');
};
