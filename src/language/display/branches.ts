import { unwrapped } from '../syntax/parts.ts';
import type { Expr } from '../syntax/syntax.ts';

/** A choice between two, with both written out. */
export type Branching = Extract<Expr, { kind: 'call' }> & { fn: 'IF' };

export const isBranching = (expr: Expr): expr is Branching =>
  expr.kind === 'call' && expr.fn === 'IF' && expr.args.length === 3;

/** The branches one under the other: what a branch leaves over may branch again. */
export const branchesOf = (expr: Branching): { branches: { when: Expr; value: Expr }[]; rest: Expr } => {
  const branches: { when: Expr; value: Expr }[] = [];
  let rest: Expr = expr;
  while (isBranching(rest)) {
    const [when, then, otherwise] = rest.args as [Expr, Expr, Expr];
    branches.push({ when: unwrapped(when), value: unwrapped(then) });
    rest = unwrapped(otherwise);
  }
  return { branches, rest };
};
