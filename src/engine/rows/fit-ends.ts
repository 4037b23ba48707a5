import type { Expr, Reference } from '../../language/syntax/syntax.ts';
import { call, constant, eachRef, mapRefs, times } from './expr.ts';

export type End = 'least' | 'greatest';

/** Where a reference leads at an end: to the row of the end, of a part whose form was read, else to the row itself. */
export interface Led {
  to: Expr;
  isEnd: boolean;
}
/** Undefined where it leads nowhere. */
export type EndOf = (ref: Reference, end: End) => Led | undefined;

const OTHER: Readonly<Record<End, End>> = { least: 'greatest', greatest: 'least' };

/**
 * The formula over rows at the least or the greatest that the forms of the parts in it allow: bore - journal is least where the bore
 * is least and the journal greatest. Undefined where no part in it has a form that was read, or where a function or a branch
 * leaves open which way it leads.
 */
export function atEnd(expr: Expr, end: End, endOf: EndOf): Expr | undefined {
  let hasForm = false;
  // A formula that names them takes care of them itself.
  let isOwn = false;
  eachRef(expr, ({ output }) => {
    if (output === 'least' || output === 'greatest' || output === 'mean') isOwn = true;
  });
  if (isOwn) return undefined;
  const formed = followed(expr, end, (ref, which) => {
    const found = endOf(ref, which);
    if (found?.isEnd) hasForm = true;
    return found;
  });
  return hasForm ? formed : undefined;
}

const areAll = (ends: readonly (Expr | undefined)[]): ends is Expr[] =>
  ends.every((one) => one !== undefined);

/** Names of the parts in it whose form was read. */
function formsIn(expr: Expr, endOf: EndOf): ReadonlySet<string> {
  const found = new Set<string>();
  eachRef(expr, (ref) => {
    if (endOf(ref, 'least')?.isEnd) found.add(`${ref.name}.${ref.output ?? ''}`);
  });
  return found;
}

/** Functions that rise with each of their arguments. */
const RISING: ReadonlySet<string> = new Set(['MIN', 'MAX', 'SUM', 'AVERAGE', 'MEDIAN', 'SQRT']);

const above = (left: Expr): Expr => ({
  kind: 'compare',
  op: '>',
  left,
  right: constant(0),
  from: 0,
  to: 0,
});
const NO_END: Expr = { kind: 'binary', op: '/', left: constant(1), right: constant(0), from: 0, to: 0 };

/** Without its sign, of what lies between two ends: of those on both sides of nothing the least is nothing. */
function size(one: Expr | undefined, other: Expr | undefined, end: End): Expr | undefined {
  if (!one || !other) return undefined;
  if (end === 'greatest') return call('MAX', call('ABS', one), call('ABS', other));
  const negated = (of: Expr): Expr => ({ kind: 'negate', of, from: 0, to: 0 });
  return call('MAX', constant(0), call('MIN', one, other), negated(call('MAX', one, other)));
}

/** Names of the parts whose form a formula does not follow, for it neither leads plainly nor names an end itself. */
export function unfollowed(expr: Expr, endOf: EndOf): string[] {
  let isOwn = false;
  eachRef(expr, ({ output }) => {
    if (output !== undefined && output !== 'value') isOwn = true;
  });
  return isOwn ? [] : [...formsIn(expr, endOf)].map((one) => one.split('.')[0] as string);
}

/** A number that stands as such. */
function numberIn(expr: Expr): number | undefined {
  switch (expr.kind) {
    case 'literal':
      return expr.value;
    case 'group':
      return numberIn(expr.of);
    case 'negate': {
      const of = numberIn(expr.of);
      return of === undefined ? undefined : -of;
    }
    default:
      return undefined;
  }
}

function followed(expr: Expr, end: End, endOf: EndOf): Expr | undefined {
  const at = (part: Expr, way: number): Expr | undefined => followed(part, way > 0 ? end : OTHER[end], endOf);
  /** A product or a quotient of two that have a form each: it is at its ends in a corner of the two. */
  const corners = (of: Expr & { kind: 'binary' }): Expr | undefined => {
    if (of.op !== '*' && of.op !== '/') return formless(of, endOf);
    // A part that stands in both would be taken at two ends at once.
    const [left, right] = [formsIn(of.left, endOf), formsIn(of.right, endOf)];
    if (left.size + right.size === 0) return formless(of, endOf);
    if ([...left].some((name) => right.has(name))) return undefined;
    const endsOf = (part: Expr, forms: ReadonlySet<string>): (Expr | undefined)[] =>
      forms.size > 0 ? [at(part, 1), at(part, -1)] : [at(part, 1)];
    const [a, b] = [endsOf(of.left, left), endsOf(of.right, right)];
    if (!areAll(a) || !areAll(b)) return undefined;
    const all = a.flatMap((one) => b.map((other): Expr => ({ ...of, left: one, right: other })));
    const worst = call(end === 'greatest' ? 'MAX' : 'MIN', ...all);
    // What is divided by must not be nothing anywhere between: else there is no end.
    const [one, other] = b;
    return of.op === '*' || !one || !other ? worst : call('IF', above(times(one, other)), worst, NO_END);
  };
  const power = (base: Expr, exponent: number): Expr | undefined => {
    if (!(exponent > 0)) return formless(expr, endOf);
    const of = exponent % 2 === 0 ? size(at(base, 1), at(base, -1), end) : at(base, 1);
    return of && ({ ...expr, left: of } as Expr);
  };
  switch (expr.kind) {
    case 'literal':
    case 'text':
      return expr;
    case 'ref':
      return endOf(expr, end)?.to;
    case 'group':
    case 'negate': {
      const of = at(expr.of, expr.kind === 'group' ? 1 : -1);
      return of && { ...expr, of };
    }
    case 'call': {
      const [first] = expr.args;
      if (expr.fn === 'ABS' && first && expr.args.length === 1) return size(at(first, 1), at(first, -1), end);
      if (!RISING.has(expr.fn)) return formless(expr, endOf);
      const args = expr.args.map((arg) => at(arg, 1));
      return args.every((arg) => arg !== undefined) ? { ...expr, args } : undefined;
    }
    case 'binary': {
      const { op, left, right } = expr;
      const [first, last] = [numberIn(left), numberIn(right)];
      const isSum = op === '+' || op === '-';
      const isMultiple = op === '*' || (op === '/' && last !== undefined);
      if (op === '^') return last === undefined ? formless(expr, endOf) : power(left, last);
      if (!isSum && !(isMultiple && (first ?? last))) return corners(expr);
      const a = at(left, isSum ? 1 : (last ?? 1));
      const b = at(right, op === '-' ? -1 : op === '*' ? (first ?? 1) : 1);
      return a && b && { ...expr, left: a, right: b };
    }
    case 'compare':
      return formless(expr, endOf);
  }
}

/** Over rows as it is, where nothing in it has a form. */
function formless(expr: Expr, endOf: EndOf): Expr | undefined {
  let isWhole = true;
  const led = mapRefs(expr, (ref) => {
    const found = endOf(ref, 'least');
    if (!found || found.isEnd) isWhole = false;
    return found?.to ?? ref;
  });
  return isWhole ? led : undefined;
}
