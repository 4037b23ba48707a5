import type { Expr } from './syntax.ts';

/** Value of an expression of plain numbers alone, in double arithmetic; undefined for anything else. */
export const constantOf = (expr: Expr): number | undefined => {
  switch (expr.kind) {
    case 'literal':
      return expr.unit === undefined && expr.bare ? expr.value : undefined;
    case 'group':
      return constantOf(expr.of);
    case 'negate': {
      const of = constantOf(expr.of);
      return of === undefined ? undefined : -of;
    }
    case 'binary': {
      const left = constantOf(expr.left);
      const right = constantOf(expr.right);
      if (left === undefined || right === undefined) return undefined;
      if (expr.op === '+') return left + right;
      if (expr.op === '-') return left - right;
      if (expr.op === '*') return left * right;
      return expr.op === '/' ? left / right : left ** right;
    }
    default:
      return undefined;
  }
};

/** The literal 0 without a unit. */
export const isZero = (expr: Expr): boolean => {
  if (expr.kind === 'group' || expr.kind === 'negate') return isZero(expr.of);
  return expr.kind === 'literal' && expr.bare && expr.unit === undefined && expr.value === 0;
};
