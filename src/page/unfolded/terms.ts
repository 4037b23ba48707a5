import type { Expr, Literal, Reference } from '../../language/syntax/syntax.ts';

/** One dimension of a sum or difference. */
export interface Term {
  sign: 1 | -1;
  of: Reference | Literal;
}

/** The dimensions a formula adds and takes away, in order; nothing where it does anything else with them. */
export const stackTerms = (expr: Expr, sign: 1 | -1 = 1): Term[] | undefined => {
  const turned = (sign === 1 ? -1 : 1) as 1 | -1;
  switch (expr.kind) {
    case 'ref':
    case 'literal':
      return [{ sign, of: expr }];
    case 'group':
      return stackTerms(expr.of, sign);
    case 'negate':
      return stackTerms(expr.of, turned);
    case 'binary': {
      if (expr.op !== '+' && expr.op !== '-') return undefined;
      const left = stackTerms(expr.left, sign);
      const right = stackTerms(expr.right, expr.op === '+' ? sign : turned);
      return left && right && [...left, ...right];
    }
    default:
      return undefined;
  }
};
