import type { Expr } from './syntax.ts';

/** For setting a formula: sum 1, product 2, sign 3, all else 4 (a stroke and a power hold together by themselves). */
export const levelOf = (expr: Expr): number => {
  if (expr.kind === 'compare') return 0;
  if (expr.kind === 'negate') return 3;
  if (expr.kind !== 'binary') return 4;
  return expr.op === '+' || expr.op === '-' ? 1 : expr.op === '*' ? 2 : 4;
};
