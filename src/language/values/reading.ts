import type { SyntaxNode } from '@lezer/common';
import type { Dimension } from '../../../shared/dimension.ts';
import { type Problem, type ProblemKind, problem, type Remedy } from '../../../shared/problem.ts';
import { type QuantityKind, quantityKind } from '../../../shared/quantities/quantities.ts';
import type { Span } from '../syntax/syntax.ts';
import type { EntryContext } from './context.ts';

/** A change to the text on its way to being stored: a unit added, a decimal comma turned into a point. */
export interface Edit extends Span {
  insert: string;
}

/** One text while it is being read: what has been found wrong so far, and how its stored form differs. */
export interface Reading {
  text: string;
  context: EntryContext;
  /** Kind of quantity wanted here, where it is settled. */
  kind: QuantityKind | undefined;
  problems: Problem[];
  edits: Edit[];
}

export const reading = (text: string, context: EntryContext): Reading => ({
  text,
  context,
  kind: context.quantity === undefined ? undefined : quantityKind(context.quantity),
  problems: [],
  edits: [],
});

/** What is wanted at a place, for units that read differently by place. */
export interface Want {
  dimension?: Dimension;
  point?: boolean;
}

export const wanted = (r: Reading): Want =>
  r.kind ? { dimension: r.kind.dimension, point: r.kind.point ?? false } : {};

export const complain = (
  r: Reading,
  kind: ProblemKind,
  message: string,
  span: Span,
  choices?: Remedy[],
): undefined => {
  r.problems.push(problem(kind, message, { from: span.from, to: span.to, ...(choices ? { choices } : {}) }));
  return undefined;
};

/** `text` with its edits made. Edits must not overlap. */
export const edited = (text: string, edits: readonly Edit[]): string => {
  let out = '';
  let at = 0;
  for (const edit of [...edits].sort((a, b) => a.from - b.from || a.to - b.to)) {
    out += text.slice(at, edit.from) + edit.insert;
    at = edit.to;
  }
  return out + text.slice(at);
};

/** The whole entry with one span replaced: what a remedy puts in place. */
export const replaced = (r: Reading, span: Span, insert: string): string =>
  r.text.slice(0, span.from) + insert + r.text.slice(span.to);

/** An entry to be put in place of the text, offered as it reads. */
export const remedy = (entry: string): Remedy => ({ label: entry.trim(), entry });

/** But for a plus in front of a value: it says nothing, and would be taken for a value itself. */
export const children = (node: SyntaxNode): SyntaxNode[] => {
  const found: SyntaxNode[] = [];
  for (let child = node.firstChild; child; child = child.nextSibling)
    if (child.name !== '+') found.push(child);
  return found;
};

export const sliceOf = (r: Reading, node: Span): string => r.text.slice(node.from, node.to);

/** Sign in front of a number that the grammar reads without a node of its own. */
export const signBefore = (r: Reading, at: number): { sign: 1 | -1; from: number } => {
  let i = at - 1;
  while (i >= 0 && /[ \t\u00a0\u2009\u202f]/.test(r.text[i] as string)) i -= 1;
  // The minus of +/- is no sign.
  if (/\+\/?-$/.test(r.text.slice(Math.max(0, i - 2), i + 1))) return { sign: 1, from: at };
  const c = r.text[i];
  return c === '-' || c === '\u2212' || c === '\u2013'
    ? { sign: -1, from: i }
    : { sign: 1, from: c === '+' ? i : at };
};
