/**
 * The dimension check: what a formula's value is, and where two sides do not go together. Points on a temperature scale
 * are told from differences: point - point is a difference, point + difference a point, everything else with a point is
 * refused. A dimension that is not known yet fits everything.
 */
import type { TradeFunction } from '../../../cells/record/cell.ts';
import { overDimension, timesDimension } from '../../../shared/dimension.ts';
import { type Problem, problem } from '../../../shared/problem.ts';
import { nearest } from '../../../shared/units/nearest.ts';
import { type ArgType, catalogueOf, type SheetFunction } from '../functions/functions.ts';
import { powerType } from '../functions/power.ts';
import {
  clash,
  dimensionOf,
  isPoint,
  isProblem,
  LOGICAL,
  mixedSorts,
  needNoPoint,
  needQuantity,
  quantity,
  UNKNOWN,
  unify,
} from '../functions/types.ts';
import { constantOf, isZero } from '../syntax/constant.ts';
import { printExpr } from '../syntax/print.ts';
import { type Sort, sortOfUnit } from '../syntax/sort.ts';
import type { Expr, Reference, Scope, ValueType } from '../syntax/syntax.ts';

export { describeType } from '../syntax/wording.ts';

export interface Checked {
  type: ValueType;
  problems: Problem[];
}

type Binary = Extract<Expr, { kind: 'binary' }>;

class Checker {
  readonly problems: Problem[] = [];

  constructor(
    private readonly scope: Scope,
    private readonly functions: ReadonlyMap<string, SheetFunction>,
  ) {}

  /** Type of an expression; one that is wrong is unknown, so that a fault is said once. */
  type(expr: Expr): ValueType {
    const found = this.infer(expr);
    if (!isProblem(found)) return found;
    this.problems.push(found.from === undefined ? { ...found, from: expr.from, to: expr.to } : found);
    return UNKNOWN;
  }

  private argument(expr: Expr): ArgType {
    const constant = constantOf(expr);
    return {
      type: this.type(expr),
      text: printExpr(expr),
      from: expr.from,
      to: expr.to,
      ...(constant === undefined ? {} : { constant, bareNumber: true }),
      ...(isZero(expr) ? { zero: true } : {}),
    };
  }

  private infer(expr: Expr): ValueType | Problem {
    switch (expr.kind) {
      case 'literal':
        return quantity(expr.dimension, expr.point, sortOfUnit(expr.unit, expr.dimension));
      case 'ref':
        return this.scope.typeOf(expr);
      case 'text':
        return { kind: 'text' };
      case 'group':
        return this.type(expr.of);
      case 'negate': {
        const of = this.argument(expr.of);
        return needQuantity(of, 'A minus sign') ?? needNoPoint(of, 'A minus sign') ?? of.type;
      }
      case 'binary':
        return this.binary(expr);
      case 'compare': {
        const sides = [this.argument(expr.left), this.argument(expr.right)];
        const type = unify(sides, 'they cannot be compared');
        if (isProblem(type)) return type;
        return type.kind === 'text' ? problem('dimension', 'Texts cannot be compared.', expr) : LOGICAL;
      }
      case 'call':
        return this.call(expr);
    }
  }

  private binary(expr: Binary): ValueType | Problem {
    const left = this.argument(expr.left);
    const right = this.argument(expr.right);
    if (expr.op === '^') return powerType(left, right);
    const where = `"${expr.op}"`;
    const wrong = needQuantity(left, where) ?? needQuantity(right, where);
    if (wrong) return wrong;
    if (expr.op === '+' || expr.op === '-') return sorted(left, right, sum(left, right, expr.op), expr.op);
    const point = needNoPoint(left, where) ?? needNoPoint(right, where);
    if (point) return point;
    const [a, b] = [dimensionOf(left.type), dimensionOf(right.type)];
    if (!a || !b) return UNKNOWN;
    const dimension = expr.op === '*' ? timesDimension(a, b) : overDimension(a, b);
    // Twice an angle is an angle; what a product of two quantities is, is not told.
    const kept =
      right.constant !== undefined
        ? left
        : expr.op === '*' && left.constant !== undefined
          ? right
          : undefined;
    return quantity(dimension, false, kept && sortOf(kept));
  }

  private call(expr: Extract<Expr, { kind: 'call' }>): ValueType | Problem {
    const fn = this.functions.get(expr.fn);
    const span = { from: expr.from, to: expr.to };
    if (!fn) {
      const near = nearest(expr.fn, this.functions.keys());
      const hint = near[0] ? ` Is ${near[0]} meant?` : '';
      return problem('unknown-function', `There is no function ${expr.fn}.${hint}`, span);
    }
    const { min, max } = fn.args;
    const count = expr.args.length;
    if (count < min || count > max) {
      const names = fn.takes.join('; ');
      const many =
        max === Number.POSITIVE_INFINITY ? `at least ${min}` : min === max ? `${min}` : `${min} to ${max}`;
      return problem(
        'syntax',
        `${fn.name}(${names}) takes ${many} argument${many === '1' ? '' : 's'}; here it has ${count}.`,
        span,
      );
    }
    if (fn.name === 'ISBLANK') return this.isBlank(expr.args[0] as Expr);
    if (fn.name === 'IF') {
      const settled = settledTest(expr.args[0] as Expr, this.scope.isBlank);
      if (settled !== undefined) return this.type(expr.args[settled ? 1 : 2] as Expr);
    }
    return fn.type(expr.args.map((arg) => this.argument(arg)));
  }

  private isBlank(arg: Expr): ValueType | Problem {
    if (arg.kind === 'ref') return LOGICAL;
    return problem(
      'syntax',
      `ISBLANK asks whether an input was left blank: it needs a name, not ${printExpr(arg)}.`,
      {
        from: arg.from,
        to: arg.to,
      },
    );
  }
}

const sortOf = ({ type }: ArgType): Sort | undefined => (type.kind === 'quantity' ? type.sort : undefined);

/** The type of a sum, with the sort of its sides, where these go together. */
const sorted = (
  left: ArgType,
  right: ArgType,
  type: ValueType | Problem,
  op: '+' | '-',
): ValueType | Problem => {
  if (isProblem(type) || type.kind !== 'quantity') return type;
  const mixed = mixedSorts(
    [left, right],
    op === '+' ? 'they cannot be added' : 'one cannot be taken from the other',
  );
  if (mixed) return mixed;
  const sort = sortOf(left) ?? sortOf(right);
  return sort ? { ...type, sort } : type;
};

const sum = (left: ArgType, right: ArgType, op: '+' | '-'): ValueType | Problem => {
  const cannot = op === '+' ? 'they cannot be added' : 'one cannot be taken from the other';
  const [a, b] = [dimensionOf(left.type), dimensionOf(right.type)];
  const points = [isPoint(left.type), isPoint(right.type)] as const;
  if (left.zero || right.zero) {
    const kept = left.zero ? right : left;
    if (points[0] || points[1]) return clash(left, right, `${cannot}; write the difference with its unit`);
    return kept.type;
  }
  if (!a || !b)
    return a && !points[0] && !isTemperature(a)
      ? left.type
      : b && !points[1] && !isTemperature(b)
        ? right.type
        : UNKNOWN;
  if (points[0] && points[1]) {
    const same = unify([left, right], cannot);
    if (isProblem(same)) return same;
    if (op === '-') return quantity(a);
    return clash(
      left,
      right,
      'two temperatures on a scale cannot be added, only a difference to one of them',
    );
  }
  if (points[1] && op === '-') {
    return clash(left, right, 'a temperature on a scale cannot be taken from a difference');
  }
  const loose = unify(
    [left, right].map((arg) => ({ ...arg, type: quantity(dimensionOf(arg.type)) })),
    cannot,
  );
  if (isProblem(loose)) return clash(left, right, cannot);
  return quantity(a, points[0] || points[1]);
};

const isTemperature = (dim: readonly number[]): boolean =>
  dim[3] === 1 && dim[0] === 0 && dim[1] === 0 && dim[2] === 0;

/** A condition that depends on blank inputs alone, where the scope can settle it. */
export const settledTest = (expr: Expr, isBlank: Scope['isBlank']): boolean | undefined => {
  if (expr.kind === 'group') return settledTest(expr.of, isBlank);
  if (expr.kind !== 'call') return undefined;
  const of = expr.args.map((arg) => settledTest(arg, isBlank));
  switch (expr.fn) {
    case 'TRUE':
      return true;
    case 'FALSE':
      return false;
    case 'ISBLANK':
      return expr.args[0]?.kind === 'ref' ? isBlank?.((expr.args[0] as Reference).name) : undefined;
    case 'NOT':
      return of[0] === undefined ? undefined : !of[0];
    case 'AND':
      return of.includes(false) ? false : of.every((one) => one === true) ? true : undefined;
    case 'OR':
      return of.includes(true) ? true : of.every((one) => one === false) ? false : undefined;
    default:
      return undefined;
  }
};

/** Checks a formula. `trade` are the functions of the cell library; the general ones are known. */
export const checkExpr = (expr: Expr, scope: Scope, trade: readonly TradeFunction[]): Checked => {
  const checker = new Checker(scope, catalogueOf(trade));
  const type = checker.type(expr);
  return { type, problems: checker.problems };
};
