import type { Expr } from './syntax.ts';

/** What an expression is put together of. */
export const partsOf = (expr: Expr): readonly Expr[] => {
  if (expr.kind === 'call') return expr.args;
  if (expr.kind === 'negate' || expr.kind === 'group') return [expr.of];
  return expr.kind === 'binary' || expr.kind === 'compare' ? [expr.left, expr.right] : [];
};

/** Without the parentheses it was typed in. */
export const unwrapped = (expr: Expr): Expr => (expr.kind === 'group' ? unwrapped(expr.of) : expr);
