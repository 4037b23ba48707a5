import { partsOf } from './parts.ts';
import { isAngular } from './sort.ts';
import type { Expr, Literal } from './syntax.ts';

/** The first literal of a formula that holds an angle, unless pi in it says that the angle is turned into turns. */
export const angleIn = (expr: Expr): Literal | undefined => {
  let found: Literal | undefined;
  const hasPi = (one: Expr): boolean => {
    if (one.kind === 'literal' && isAngular(one.unit)) found ??= one;
    return (one.kind === 'call' && one.fn.toUpperCase() === 'PI') || partsOf(one).some(hasPi);
  };
  return hasPi(expr) ? undefined : found;
};
