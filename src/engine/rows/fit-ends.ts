import type { Expr, Reference } from '../../language/syntax/syntax.ts';
import { eachRef, mapRefs } from './expr.ts';

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
 * is least and the journal greatest. Undefined where no part in it has a form that was read, or where the formula is none
 * of sums, differences and multiples, so that which way it leads is not plain.
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
      if (expr.fn !== 'MIN' && expr.fn !== 'MAX' && expr.fn !== 'SUM') return formless(expr, endOf);
      const args = expr.args.map((arg) => at(arg, 1));
      return args.every((arg) => arg !== undefined) ? { ...expr, args } : undefined;
    }
    case 'binary': {
      const { op, left, right } = expr;
      const [first, last] = [numberIn(left), numberIn(right)];
      const isSum = op === '+' || op === '-';
      const isMultiple = op === '*' || (op === '/' && last !== undefined);
      if (!isSum && !(isMultiple && (first ?? last))) return formless(expr, endOf);
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
