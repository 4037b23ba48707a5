import { toEngine } from '../../language/compile/compile.ts';
import type { Expr } from '../../language/syntax/syntax.ts';
import type { RowKey } from '../rows/key.ts';

/** A compiled formula with holes for the addresses of the rows it refers to; the same in every case column. */
export interface Template {
  /** Text pieces, one more than there are holes. */
  text: readonly string[];
  /** Key of the row each hole stands for. */
  keys: readonly RowKey[];
  /** Equal for equal formulas: tells whether anything has to be written. */
  signature: string;
}

const OPEN = '\u0001';
const CLOSE = '\u0002';

export function compileTemplate(expr: Expr): Template {
  const whole = toEngine(expr, (ref) => OPEN + ref.name + CLOSE);
  const text: string[] = [];
  const keys: RowKey[] = [];
  let rest = whole;
  for (;;) {
    const open = rest.indexOf(OPEN);
    if (open < 0) break;
    const close = rest.indexOf(CLOSE, open);
    text.push(rest.slice(0, open));
    keys.push(rest.slice(open + 1, close) as RowKey);
    rest = rest.slice(close + 1);
  }
  text.push(rest);
  return { text, keys, signature: whole };
}

export function fillTemplate(template: Template, address: (hole: number) => string): string {
  let out = template.text[0] as string;
  for (let i = 0; i < template.keys.length; i++) out += address(i) + (template.text[i + 1] as string);
  return out;
}
