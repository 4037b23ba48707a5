import type { Expr } from './syntax.ts';

const LEVEL = { '+': 2, '-': 2, '*': 3, '/': 3, '^': 5 } as const;

/** How tightly an expression holds together: comparison 1, sum 2, product 3, sign 4, power 5, all else 6. */
const levelOf = (expr: Expr): number => {
  if (expr.kind === 'compare') return 1;
  if (expr.kind === 'binary') return LEVEL[expr.op];
  return expr.kind === 'negate' ? 4 : 6;
};

const within = (expr: Expr, least: number): string =>
  levelOf(expr) < least ? `(${printExpr(expr)})` : printExpr(expr);

/** Formula text without `=`, in its stored form; what was read from it reads back as the same tree. */
export const printExpr = (expr: Expr): string => {
  switch (expr.kind) {
    case 'literal':
      return expr.text;
    case 'ref':
      return expr.output === undefined ? expr.name : `${expr.name}.${expr.output}`;
    case 'text':
      return `"${expr.text}"`;
    case 'call':
      return `${expr.fn}(${expr.args.map(printExpr).join('; ')})`;
    case 'group':
      return `(${printExpr(expr.of)})`;
    case 'negate':
      return `-${within(expr.of, 4)}`;
    case 'compare':
      return `${within(expr.left, 1)} ${expr.op} ${within(expr.right, 2)}`;
    case 'binary': {
      const level = LEVEL[expr.op];
      if (expr.op === '^') return `${within(expr.left, 6)}^${within(expr.right, 4)}`;
      return `${within(expr.left, level)} ${expr.op} ${within(expr.right, level + 1)}`;
    }
  }
};
