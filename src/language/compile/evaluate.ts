/**
 * Direct evaluation of a tree in IEEE double arithmetic: the same figures, bit for bit, as the grid gives. Where an
 * input is not a number (NaN, an unknown) so is the result.
 */
import { type Problem, problem } from '../../../shared/problem.ts';
import { printExpr } from '../syntax/print.ts';
import type { BinaryOperator, Expr, Reference } from '../syntax/syntax.ts';
import { short } from '../syntax/wording.ts';
import { argumentsOf, comparison, scaleOfBoth } from './ties.ts';

/** What a reference or an argument can be: text only for the choices and keys a trade function takes. */
type Value = number | boolean | string;

/** The part of a function that computing needs. */
export interface Computable {
  compute: (...args: never[]) => number | boolean | { message: string };
}

export type Lookup = (ref: Reference) => Value | Problem;

const isProblem = (value: Value | Problem): value is Problem => typeof value === 'object';

const unknown = (value: Value): boolean => Number.isNaN(value);

const arithmetic = (expr: Expr, message: string, more: Pick<Problem, 'cause' | 'said'> = {}): Problem =>
  problem('arithmetic', message, { from: expr.from, to: expr.to, ...more });

const applyOperator = (op: BinaryOperator, a: number, b: number): number => {
  if (op === '+') return a + b;
  if (op === '-') return a - b;
  if (op === '*') return a * b;
  return a / b;
};

/** The grid has no negative zero; neither do we. */
const positiveZero = <T extends Value>(value: T): T => (value === 0 ? (0 as T) : value);

class Evaluation {
  constructor(
    private readonly lookup: Lookup,
    private readonly functions: ReadonlyMap<string, Computable>,
  ) {}

  value(expr: Expr): Value | Problem {
    switch (expr.kind) {
      case 'literal':
        return expr.value;
      case 'text':
        return expr.text;
      case 'ref':
        return this.lookup(expr);
      case 'group':
        return this.value(expr.of);
      case 'negate': {
        const of = this.value(expr.of);
        return isProblem(of) ? of : positiveZero(-Number(of));
      }
      case 'compare': {
        const sides = this.pair(expr);
        if (!Array.isArray(sides)) return sides;
        const scale = this.value(scaleOfBoth(expr));
        if (isProblem(scale)) return scale;
        const [left, right] = sides.map(Number) as [number, number];
        return unknown(left) || unknown(right) ? Number.NaN : comparison(expr.op)(left, right, Number(scale));
      }
      case 'binary':
        return this.binary(expr);
      case 'call':
        return this.call(expr);
    }
  }

  private pair(expr: { left: Expr; right: Expr }): [Value, Value] | Problem {
    const left = this.value(expr.left);
    if (isProblem(left)) return left;
    const right = this.value(expr.right);
    return isProblem(right) ? right : [left, right];
  }

  private binary(expr: Extract<Expr, { kind: 'binary' }>): Value | Problem {
    const sides = this.pair(expr);
    if (!Array.isArray(sides)) return sides;
    const [a, b] = sides.map(Number) as [number, number];
    if (expr.op === '^') return this.computed(expr, 'POWER', [a, b]);
    if (unknown(a) || unknown(b)) return Number.NaN;
    if (expr.op === '/' && b === 0) {
      return arithmetic(expr, `Division by zero: \`${short(printExpr(expr.right))}\` is 0.`, {
        cause: 'division',
      });
    }
    const result = applyOperator(expr.op, a, b);
    if (Number.isFinite(result)) return positiveZero(result);
    return arithmetic(expr, `\`${short(printExpr(expr))}\` is beyond what can be computed with.`, {
      cause: 'overflow',
    });
  }

  private call(expr: Extract<Expr, { kind: 'call' }>): Value | Problem {
    if (expr.fn === 'IF') {
      const test = this.value(expr.args[0] as Expr);
      if (isProblem(test) || unknown(test)) return test;
      return this.value(expr.args[test ? 1 : 2] as Expr);
    }
    const values: Value[] = [];
    for (const arg of argumentsOf(expr)) {
      const value = this.value(arg);
      if (isProblem(value)) return value;
      values.push(value);
    }
    if ((expr.fn === 'AND' || expr.fn === 'OR' || expr.fn === 'NOT') && values.some(unknown))
      return Number.NaN;
    return this.computed(expr, expr.fn, values);
  }

  private computed(expr: Expr, name: string, values: Value[]): Value | Problem {
    const fn = this.functions.get(name);
    if (!fn)
      return problem('unknown-function', `There is no function ${name}.`, { from: expr.from, to: expr.to });
    const result = fn.compute(...(values as never[]));
    if (typeof result === 'object')
      return arithmetic(expr, `${name}: ${result.message}.`, { said: result.message });
    if (typeof result === 'boolean' || Number.isFinite(result) || values.some(unknown))
      return positiveZero(result);
    return arithmetic(expr, `${name} gives no finite number here.`, {
      said: `${name} gives no finite number here`,
    });
  }
}

/** Value of a tree, or the first problem met from the left. A text comes back as a problem: no cell holds one. */
export const evaluate = (
  expr: Expr,
  lookup: Lookup,
  functions: ReadonlyMap<string, Computable>,
): number | boolean | Problem => {
  const value = new Evaluation(lookup, functions).value(expr);
  return typeof value === 'string'
    ? arithmetic(expr, `"${short(value)}" is a text, not a value.`, {
        said: `"${short(value)}" is a text, not a value`,
      })
    : value;
};
