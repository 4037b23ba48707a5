import { NONE } from '../../../shared/dimension.ts';
import type { Expr, Reference } from '../../language/syntax/syntax.ts';
import type { RowKey } from './key.ts';

const nowhere = { from: 0, to: 0 };

/** Reference to a row by key; where it stands in a text, if it does. */
export const rowRef = (key: RowKey, { from, to }: Pick<Expr, 'from' | 'to'> = nowhere): Reference => ({
  kind: 'ref',
  name: key,
  from,
  to,
});

/** A plain number in SI, for expressions the engine makes itself. */
export const constant = (value: number): Expr => ({
  kind: 'literal',
  value,
  dimension: NONE,
  point: false,
  bare: true,
  text: String(value),
  ...nowhere,
});

export const plus = (left: Expr, right: Expr): Expr => ({ kind: 'binary', op: '+', left, right, ...nowhere });
export const minus = (left: Expr, right: Expr): Expr => ({
  kind: 'binary',
  op: '-',
  left,
  right,
  ...nowhere,
});
export const times = (left: Expr, right: Expr): Expr => ({
  kind: 'binary',
  op: '*',
  left,
  right,
  ...nowhere,
});
export const call = (fn: string, ...args: Expr[]): Expr => ({ kind: 'call', fn, args, ...nowhere });
export const quoted = (text: string): Expr => ({ kind: 'text', text, ...nowhere });

/** Rebuilds an expression with every reference put through `change`. */
export function mapRefs(expr: Expr, change: (ref: Reference) => Expr): Expr {
  switch (expr.kind) {
    case 'ref':
      return change(expr);
    case 'literal':
    case 'text':
      return expr;
    case 'call':
      return {
        ...expr,
        args: expr.args.map((arg) => mapRefs(arg, change)),
        ...(expr.scale ? { scale: mapRefs(expr.scale, change) } : {}),
      };
    case 'negate':
    case 'group':
      return { ...expr, of: mapRefs(expr.of, change) };
    case 'binary':
      return { ...expr, left: mapRefs(expr.left, change), right: mapRefs(expr.right, change) };
    case 'compare':
      return {
        ...expr,
        left: mapRefs(expr.left, change),
        right: mapRefs(expr.right, change),
        ...(expr.scale ? { scale: mapRefs(expr.scale, change) } : {}),
      };
  }
}

export function eachRef(expr: Expr, visit: (ref: Reference) => void): void {
  mapRefs(expr, (ref) => {
    visit(ref);
    return ref;
  });
}

const truth = (value: boolean): Expr => call(value ? 'TRUE' : 'FALSE');
const known = (expr: Expr): boolean | undefined =>
  expr.kind === 'call' && expr.args.length === 0 && (expr.fn === 'TRUE' || expr.fn === 'FALSE')
    ? expr.fn === 'TRUE'
    : expr.kind === 'group'
      ? known(expr.of)
      : undefined;

/**
 * Settles ISBLANK before computing and drops the branches that are then not needed, so that a blank optional input is
 * an error only where it is really used.
 */
export function fold(expr: Expr, isBlank: (name: string) => boolean | undefined): Expr {
  switch (expr.kind) {
    case 'call': {
      if (expr.fn === 'ISBLANK' && expr.args[0]?.kind === 'ref') {
        const blank = isBlank(expr.args[0].name);
        if (blank !== undefined) return truth(blank);
      }
      if (expr.fn === 'IF' && expr.args.length === 3) {
        const test = fold(expr.args[0] as Expr, isBlank);
        const settled = known(test);
        if (settled !== undefined) return fold(expr.args[settled ? 1 : 2] as Expr, isBlank);
        return { ...expr, args: [test, ...expr.args.slice(1).map((arg) => fold(arg, isBlank))] };
      }
      const args = expr.args.map((arg) => fold(arg, isBlank));
      if (expr.fn === 'NOT' && args[0]) {
        const settled = known(args[0]);
        if (settled !== undefined) return truth(!settled);
      }
      if (expr.fn === 'AND' || expr.fn === 'OR') {
        const decisive = expr.fn === 'OR';
        if (args.some((arg) => known(arg) === decisive)) return truth(decisive);
        const open = args.filter((arg) => known(arg) === undefined);
        if (open.length === 0) return truth(!decisive);
        return open.length === 1 ? (open[0] as Expr) : { ...expr, args: open };
      }
      return { ...expr, args };
    }
    case 'negate':
    case 'group':
      return { ...expr, of: fold(expr.of, isBlank) };
    case 'binary':
    case 'compare':
      return { ...expr, left: fold(expr.left, isBlank), right: fold(expr.right, isBlank) };
    default:
      return expr;
  }
}
