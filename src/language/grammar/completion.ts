/** What can be completed at the cursor, for the editor: which kind of word, and how much of it is there. */
import { isFormula } from './tree.ts';

export interface CompletionContext {
  kind: 'name' | 'unit' | 'function' | 'output';
  /** What is typed of it so far. */
  prefix: string;
  /** Where it begins, in characters. */
  from: number;
  /** Cell whose output is wanted. */
  of?: string;
}

const WORD = /[\p{L}_\u00b5°%][\p{L}\p{M}\p{N}_µ°%]*$/u;

/**
 * `name` also covers functions not told apart yet; `function` is certain (a parenthesis follows). In an entry that is
 * no formula only units are completed. Undefined where nothing can be, such as inside a text or a number.
 */
export const completionContext = (text: string, pos: number): CompletionContext | undefined => {
  const before = text.slice(0, pos);
  const prefix = WORD.exec(before)?.[0] ?? '';
  const from = pos - prefix.length;
  const ahead = before.slice(0, from);
  const afterNumber = /(?:\d|\d\.)\s*$/.test(ahead) || /\d\s*[A-Za-zµ°]+[/.·*]$/.test(ahead);
  if (!isFormula(text)) return afterNumber ? { kind: 'unit', prefix, from } : undefined;
  if (from === 0 || insideText(before)) return undefined;
  const output = /((?:\{[\w-]+\})|(?:[\p{L}_\u00b5][\p{L}\p{M}\p{N}_]*))\.$/u.exec(ahead);
  if (output) return { kind: 'output', prefix, from, of: output[1] as string };
  if (afterNumber && !/[\p{L}_][\p{L}\p{N}_]*\s*$/u.test(ahead)) return { kind: 'unit', prefix, from };
  if (/[\p{L}\p{N}_)]\s+$/u.test(ahead) || /[\p{N})]$/u.test(ahead)) return undefined;
  const after = /^[\p{L}\p{M}\p{N}_]*\s*/u.exec(text.slice(pos))?.[0] ?? '';
  return { kind: text[pos + after.length] === '(' && prefix !== '' ? 'function' : 'name', prefix, from };
};

/** An inch mark stands behind a number; any other quote opens or closes a text. */
const insideText = (before: string): boolean =>
  (before.replace(/\d\s*"/g, '').match(/"/g)?.length ?? 0) % 2 === 1;
