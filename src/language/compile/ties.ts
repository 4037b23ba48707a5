/**
 * What is equal but for the rounding of doubles counts as equal: 10 mm - 9.9 mm is 0.1 mm, though their difference as
 * computed is not. Two sides of a comparison are equal within a trillionth of the largest operand that entered them, and
 * a quotient that near to a whole number is that number. The same in grid, trees, blocks and bounds.
 */
import { NONE } from '../../../shared/dimension.ts';
import { TIE } from '../functions/settled.ts';
import type { BinaryOperator, CompareOperator, Expr, Reference } from '../syntax/syntax.ts';

const TESTS: Readonly<Record<CompareOperator, (apart: number, slack: number) => boolean>> = {
  '<': (apart, slack) => apart < -slack,
  '<=': (apart, slack) => apart <= slack,
  '>': (apart, slack) => apart > slack,
  '>=': (apart, slack) => apart >= -slack,
  '=': (apart, slack) => Math.abs(apart) <= slack,
  '<>': (apart, slack) => Math.abs(apart) > slack,
};

export const isComparison = (op: string): op is CompareOperator => Object.hasOwn(TESTS, op);

/** A comparison of two numbers; `scale` is the largest operand that entered either. */
export const comparison = (
  op: CompareOperator,
): ((left: number, right: number, scale: number) => boolean) => {
  const test = TESTS[op];
  return (left, right, scale) => test(left - right, TIE * Math.max(scale, Math.abs(left), Math.abs(right)));
};

/**
 * Functions with steps, and what their further arguments are where none is written: behind them goes one more, the
 * largest operand that entered the first.
 */
const STEPPED: Readonly<Record<string, readonly number[]>> = {
  INT: [],
  SIGN: [],
  MOD: [],
  ROUND: [0],
  ROUNDUP: [0],
  ROUNDDOWN: [0],
  CEILING: [1],
  FLOOR: [1],
  MROUND: [],
};

export const isStepped = (fn: string): boolean => Object.hasOwn(STEPPED, fn);

const nowhere = { from: 0, to: 0 };
const call = (fn: string, ...args: Expr[]): Expr => ({ kind: 'call', fn, args, ...nowhere });
const number = (value: number): Expr => ({
  kind: 'literal',
  value,
  dimension: NONE,
  point: false,
  bare: true,
  text: String(value),
  ...nowhere,
});
const binary = (op: BinaryOperator, left: Expr, right: Expr): Expr => ({
  kind: 'binary',
  op,
  left,
  right,
  ...nowhere,
});

/** The arguments a function computes with: those written, and of one with steps what belongs behind them. */
export const argumentsOf = (expr: Extract<Expr, { kind: 'call' }>): readonly Expr[] => {
  const rest = STEPPED[expr.fn];
  const [first] = expr.args;
  if (!rest || !first) return expr.args;
  const filled = [...expr.args, ...rest.slice(expr.args.length - 1).map(number)];
  return [...filled, expr.scale ?? scaleOf(first) ?? number(0)];
};

/** Parts a scale may have: beyond them what enters is told by the sides alone. */
const MOST_PARTS = 120;

/**
 * The largest operand of sums and differences that entered a value, in the units of the value, as a formula; undefined
 * where the value itself tells.
 */
const scaleOf = (expr: Expr, scale = new Scale()): Expr | undefined => {
  const found = scale.of(expr);
  return found && partsOf(found) <= MOST_PARTS ? found : undefined;
};

const larger = (a: Expr | undefined, b: Expr | undefined): Expr | undefined =>
  a && b ? call('MAX', a, b) : (a ?? b);

type Compare = Extract<Expr, { kind: 'compare' }>;

/** The same of both sides of a comparison. */
export const scaleOfBoth = ({ left, right, scale }: Compare): Expr =>
  scale ?? larger(scaleOf(left), scaleOf(right)) ?? number(0);

/** Other formulas are followed so far, in operations in all: what lies further back is told by what it came to. */
const MOST_FOLLOWED = 30;

/**
 * The formula with the scales of its comparisons and steps written out where references lead to other formulas, given by
 * `follow`: a difference that is worked out in one cell is as uncertain where another compares it. The formula
 * itself where none does.
 */
export const weighed = (expr: Expr, follow: (ref: Reference) => Expr | undefined): Expr => {
  const walk = (at: Expr): Expr => {
    switch (at.kind) {
      case 'group':
      case 'negate':
        return same(at.of, walk(at.of), (of) => ({ ...at, of }), at);
      case 'binary':
      case 'compare': {
        const [left, right] = [walk(at.left), walk(at.right)];
        const whole = left === at.left && right === at.right ? at : { ...at, left, right };
        if (whole.kind !== 'compare') return whole;
        const scale = across((one) => larger(scaleOf(whole.left, one()), scaleOf(whole.right, one())));
        return scale ? { ...whole, scale } : whole;
      }
      case 'call': {
        const args = at.args.map(walk);
        const whole = args.every((arg, i) => arg === at.args[i]) ? at : { ...at, args };
        const [first] = args;
        if (!first || !isStepped(at.fn)) return whole;
        const scale = across((one) => scaleOf(first, one()));
        return scale ? { ...whole, scale } : whole;
      }
      default:
        return at;
    }
  };
  /** A scale for which some other formula was followed. */
  const across = (of: (one: () => Scale) => Expr | undefined): Expr | undefined => {
    let isAcross = false;
    const tell = (ref: Reference): Expr | undefined => {
      const found = follow(ref);
      if (found) isAcross = true;
      return found;
    };
    const found = of(() => new Scale(tell, MOST_FOLLOWED));
    return isAcross ? found : undefined;
  };
  return walk(expr);
};

const same = <T extends Expr>(before: T, after: T, made: (of: T) => Expr, whole: Expr): Expr =>
  before === after ? whole : made(after);

const partsOf = (expr: Expr): number => {
  switch (expr.kind) {
    case 'call':
      return expr.args.reduce((sum, arg) => sum + partsOf(arg), 1);
    case 'negate':
    case 'group':
      return partsOf(expr.of);
    case 'binary':
    case 'compare':
      return 1 + partsOf(expr.left) + partsOf(expr.right);
    default:
      return 1;
  }
};

const LISTS = new Set(['MIN', 'MAX', 'SUM', 'AVERAGE', 'MEDIAN', 'ABS']);

/** Nothing that is itself settled by a scale may stand in one: they would double at every level. */
const isPlain = (expr: Expr): boolean => {
  switch (expr.kind) {
    case 'call':
      return expr.fn !== 'IF' && !isStepped(expr.fn) && expr.args.every(isPlain);
    case 'negate':
    case 'group':
      return isPlain(expr.of);
    case 'binary':
      return isPlain(expr.left) && isPlain(expr.right);
    case 'compare':
      return false;
    default:
      return expr.kind !== 'text';
  }
};

class Scale {
  constructor(
    private readonly follow: (ref: Reference) => Expr | undefined = () => undefined,
    private left = MOST_PARTS,
  ) {}

  /** What sums and differences leave of more than they give; undefined where nothing is lost in them. */
  of(expr: Expr): Expr | undefined {
    if (this.left-- <= 0) return undefined;
    switch (expr.kind) {
      case 'group':
      case 'negate':
        return this.of(expr.of);
      case 'ref': {
        const behind = this.follow(expr);
        return behind && this.of(behind);
      }
      case 'call':
        return LISTS.has(expr.fn) ? most(expr.args.map((arg) => this.of(arg))) : undefined;
      case 'binary':
        return this.binary(expr);
      default:
        return undefined;
    }
  }

  private binary({ op, left, right }: Extract<Expr, { kind: 'binary' }>): Expr | undefined {
    const [a, b] = [this.of(left), this.of(right)];
    if (op === '+' || op === '-') return most([a ?? sizeOf(left), b ?? sizeOf(right)]);
    if (op === '^') return undefined;
    if (!a && !b) return undefined;
    const [x, y] = [sizeOf(left), sizeOf(right)];
    if (!y) return undefined;
    const byLeft = a && binary(op, a, y);
    if (!b || !x) return byLeft;
    return most([byLeft, op === '*' ? binary('*', x, b) : binary('/', binary('*', x, b), binary('*', y, y))]);
  }
}

const sizeOf = (expr: Expr): Expr | undefined => {
  switch (expr.kind) {
    case 'group':
    case 'negate':
      return sizeOf(expr.of);
    case 'literal':
      return number(Math.abs(expr.value));
    default:
      return isPlain(expr) ? call('ABS', expr) : undefined;
  }
};

const most = (all: readonly (Expr | undefined)[]): Expr | undefined => {
  const there = all.filter((one) => one !== undefined);
  const flat = there.flatMap((one) => (one.kind === 'call' && one.fn === 'MAX' ? one.args : [one]));
  return flat.length < 2 ? flat[0] : call('MAX', ...flat);
};
