/**
 * A formula as operations over boxes: what it encloses, and its slopes in all it refers to. The rules of the general
 * functions stand here; a function of the trade brings its own (`Movement`).
 */

import type { Motion, Movement } from '../../../cells/record/cell.ts';
import type { Computable } from '../compile/evaluate.ts';
import { argumentsOf, isStepped, scaleOfBoth } from '../compile/ties.ts';
import { settled } from '../functions/settled.ts';
import { constantOf } from '../syntax/constant.ts';
import { unwrapped } from '../syntax/parts.ts';
import { printExpr } from '../syntax/print.ts';
import type { Expr, Reference } from '../syntax/syntax.ts';
import { Difference, Negative, Product, Quotient, Scaled, Square, Sum } from './arithmetic.ts';
import { type Bound, Constant, type Doubt, Port } from './bound.ts';
import { Choice, Comparison, Narrowed, Not, Together } from './branches.ts';
import { ArcSine, ArcTangent, Cosine, Exponential, Logarithm, Power, Root, Sine, Tangent } from './curves.ts';
import { Direction, MovingPower } from './curves-of-two.ts';
import { type Argument, Declared } from './declared.ts';
import { divDown, divUp } from './directed.ts';
import { Extreme, Middle, Size, Total } from './kinks.ts';
import { LooseSteps, Remainder, Steps } from './steps.ts';

/** What is known of a function: how it computes and, of one of the trade, how it moves. */
export interface Moving extends Computable {
  movement?: Movement | undefined;
  /** Names of its arguments, for the movement. */
  takes?: readonly string[] | undefined;
  /** Encloses it, where it knows how. */
  bound?: ((args: readonly Argument[]) => Bound) | undefined;
}

export interface Enclosure {
  root: Bound;
  /** By slot. Before `root.forward()` each is to hold the ends of its quantity; `root.back(1, 1)` adds up slopes there. */
  ports: readonly Port[];
  /** Asked for a second look, where one is to be had. */
  doubt: Doubt;
}

type Call = Extract<Expr, { kind: 'call' }>;
type Compare = Extract<Expr, { kind: 'compare' }>;

/** What a condition says of an expression where it holds. */
interface Told {
  floor?: Bound;
  ceiling?: Bound;
}

const keyOf = (expr: Expr): string => printExpr(unwrapped(expr));
const minus = (left: Expr, right: Expr): Expr => ({
  kind: 'binary',
  op: '-',
  left: unwrapped(left),
  right: unwrapped(right),
  from: 0,
  to: 0,
});

const NATURAL = 1;

class Encloser {
  private told = new Map<string, Told>();

  constructor(
    private readonly slotOf: (ref: Reference) => number,
    private readonly ports: readonly Port[],
    private readonly functions: ReadonlyMap<string, Moving>,
    private readonly doubt: Doubt,
  ) {}

  node(expr: Expr): Bound {
    const own = this.bare(expr);
    if (this.told.size === 0 || expr.kind === 'group') return own;
    const told = this.told.get(keyOf(expr));
    return told ? new Narrowed(own, told.floor, told.ceiling) : own;
  }

  private bare(expr: Expr): Bound {
    switch (expr.kind) {
      case 'literal':
        return new Constant(expr.value);
      case 'text':
        return new Constant(Number.NaN);
      case 'group':
        return this.node(expr.of);
      case 'ref':
        return this.ports[this.slotOf(expr)] ?? new Constant(Number.NaN);
      case 'negate':
        return new Negative(this.node(expr.of));
      case 'compare':
        return new Comparison(
          expr.op,
          this.node(expr.left),
          this.node(expr.right),
          this.node(scaleOfBoth(expr)),
        );
      case 'binary':
        return this.binary(expr);
      case 'call':
        return this.call(expr);
    }
  }

  private binary(expr: Extract<Expr, { kind: 'binary' }>): Bound {
    const { op, left, right } = expr;
    if (op === '^') return this.power(left, right);
    const [x, y] = [this.node(left), this.node(right)];
    if (op === '+') return new Sum(x, y);
    if (op === '-') return new Difference(x, y);
    if (op === '/') return new Quotient(x, y, this.doubt);
    return keyOf(left) === keyOf(right) ? new Square(x) : new Product(x, y);
  }

  private power(base: Expr, exponent: Expr): Bound {
    const power = constantOf(exponent);
    const of = this.node(base);
    if (power === 2) return new Square(of);
    if (power !== undefined && Number.isFinite(power)) return new Power(of, this.doubt, power);
    return new MovingPower(of, this.node(exponent), this.doubt);
  }

  private call(expr: Call): Bound {
    const { fn, args } = expr;
    if (fn === 'IF') return this.choice(expr);
    if (fn === 'POWER') return this.power(args[0] as Expr, args[1] as Expr);
    if (isStepped(fn)) return this.stepped(expr);
    const known = this.functions.get(fn);
    if (known?.movement || args.some((arg) => arg.kind === 'text')) return this.declared(expr, known);
    return this.general(expr) ?? this.declared(expr, known);
  }

  private general({ fn, args }: Call): Bound | undefined {
    const nodes = args.map((arg) => this.node(arg));
    const [x, y] = nodes as [Bound, Bound];
    switch (fn) {
      case 'MIN':
        return new Extreme(nodes, -1);
      case 'MAX':
        return new Extreme(nodes, 1);
      case 'MEDIAN':
        return new Middle(nodes);
      case 'SUM':
      case 'AVERAGE':
        return new Total(nodes, fn === 'AVERAGE');
      case 'SUMSQ':
        return new Total(
          nodes.map((node) => new Square(node)),
          false,
        );
      case 'ABS':
        return new Size(x);
      case 'SQRT':
        return new Root(x, this.doubt);
      case 'EXP':
        return new Exponential(x, this.doubt);
      case 'LN':
        return new Logarithm(x, this.doubt, Math.log, NATURAL);
      case 'LOG10':
        return new Logarithm(x, this.doubt, Math.log10, Math.LOG10E);
      case 'LOG':
        return this.logarithm(x, args[1]);
      case 'SIN':
        return new Sine(x, this.doubt);
      case 'COS':
        return new Cosine(x, this.doubt);
      case 'TAN':
        return new Tangent(x, this.doubt);
      case 'ASIN':
      case 'ACOS':
        return new ArcSine(x, this.doubt, fn === 'ACOS');
      case 'ATAN':
        return new ArcTangent(x, this.doubt);
      case 'ATAN2':
        return new Direction(x, y);
      case 'PI':
        return new Constant(Math.PI);
      case 'DEGREES':
        return new Scaled(x, divDown(180, Math.PI), divUp(180, Math.PI));
      case 'RADIANS':
        return new Scaled(x, divDown(Math.PI, 180), divUp(Math.PI, 180));
      case 'AND':
      case 'OR':
        return new Together(nodes, fn === 'OR' ? 1 : -1);
      case 'NOT':
        return new Not(x);
      case 'TRUE':
      case 'FALSE':
      case 'ISBLANK':
        return new Constant(Number(fn === 'TRUE'));
      default:
        return undefined;
    }
  }

  private logarithm(x: Bound, base: Expr | undefined): Bound {
    if (base === undefined) return new Logarithm(x, this.doubt, Math.log10, Math.LOG10E);
    const fixed = constantOf(base);
    if (fixed !== undefined && fixed > 0 && fixed !== 1)
      return new Logarithm(x, this.doubt, (value) => Math.log(value) / Math.log(fixed), 1 / Math.log(fixed));
    return new Quotient(
      new Logarithm(x, this.doubt, Math.log, NATURAL),
      new Logarithm(this.node(base), this.doubt, Math.log, NATURAL),
      this.doubt,
    );
  }

  private stepped(expr: Call): Bound {
    const { fn } = expr;
    const args = argumentsOf(expr);
    const of = this.node(args[0] as Expr);
    const scale = this.node(args.at(-1) as Expr);
    const compute = this.functions.get(fn)?.compute as
      | ((...values: number[]) => number | { message: string })
      | undefined;
    const by = args.length > 2 ? (args[1] as Expr) : undefined;
    if (fn === 'MOD')
      return new Remainder(of, this.node(by as Expr), scale, (x, y, most) => {
        const quotient = settled(x / y, most / Math.abs(y));
        return { whole: Math.floor(quotient), isExact: Number.isInteger(quotient) };
      });
    const step = by === undefined ? undefined : fixedOf(by);
    if (by !== undefined && step === undefined) {
      if (fn.startsWith('ROUND')) return this.declared(expr, undefined);
      const [below, above] = fn === 'FLOOR' ? [1, 0] : fn === 'CEILING' ? [0, 1] : [0.5, 0.5];
      return new LooseSteps(of, this.node(by), below, above);
    }
    return new Steps(of, scale, (x, most) => {
      const found = step === undefined ? compute?.(x, most) : compute?.(x, step, most);
      return typeof found === 'number' ? found : undefined;
    });
  }

  private declared({ fn, args }: Call, known: Moving | undefined): Bound {
    const parts = args.map((arg): Argument => (arg.kind === 'text' ? arg.text : this.node(arg)));
    const { movement, takes, bound } = known ?? {};
    if (bound) return bound(parts);
    const motions = args.map((_, i): Motion | undefined => movement?.moves?.[takes?.[i] ?? '']);
    return new Declared(parts, known ?? this.functions.get(fn), movement, motions);
  }

  /** The branches of a choice, each with what its condition says of the expressions in it. */
  private choice({ args }: Call): Bound {
    const [test, yes, no] = args as [Expr, Expr, Expr];
    return new Choice(
      this.node(test),
      this.under(holding(test, true), yes),
      this.under(holding(test, false), no),
    );
  }

  private under(conditions: readonly Compare[], branch: Expr): Bound {
    const before = this.told;
    const bare = (expr: Expr): Bound => {
      const inner = this.told;
      this.told = before;
      const node = this.node(expr);
      this.told = inner;
      return node;
    };
    const told = new Map(before);
    const tell = (expr: Expr, more: Told): void => {
      if (unwrapped(expr).kind === 'literal') return;
      const key = keyOf(expr);
      told.set(key, { ...told.get(key), ...more });
    };
    const zero = new Constant(0);
    for (const { op, left, right } of conditions) {
      const isAbove = op === '>' || op === '>=' || op === '=';
      const isBelow = op === '<' || op === '<=' || op === '=';
      if (!isAbove && !isBelow) continue;
      const [x, y] = [bare(left), bare(right)];
      tell(left, { ...(isAbove ? { floor: y } : {}), ...(isBelow ? { ceiling: y } : {}) });
      tell(right, { ...(isAbove ? { ceiling: x } : {}), ...(isBelow ? { floor: x } : {}) });
      tell(minus(left, right), {
        ...(isAbove ? { floor: zero } : {}),
        ...(isBelow ? { ceiling: zero } : {}),
      });
      tell(minus(right, left), {
        ...(isAbove ? { ceiling: zero } : {}),
        ...(isBelow ? { floor: zero } : {}),
      });
    }
    this.told = told;
    const node = this.node(branch);
    this.told = before;
    return node;
  }
}

/** A number written out, with or without a unit. */
const fixedOf = (expr: Expr): number | undefined => {
  const bare = unwrapped(expr);
  return bare.kind === 'literal' ? bare.value : constantOf(bare);
};

const OPPOSITE = { '<': '>=', '<=': '>', '>': '<=', '>=': '<', '=': '<>', '<>': '=' } as const;

/** Comparisons that all hold where a condition comes out so. */
const holding = (test: Expr, outcome: boolean): Compare[] => {
  const bare = unwrapped(test);
  if (bare.kind === 'compare') return [outcome ? bare : { ...bare, op: OPPOSITE[bare.op] }];
  if (bare.kind !== 'call') return [];
  if (bare.fn === 'NOT') return holding(bare.args[0] as Expr, !outcome);
  if (bare.fn === (outcome ? 'AND' : 'OR')) return bare.args.flatMap((arg) => holding(arg, outcome));
  return [];
};

/** `slotOf` gives the port of a reference, of `slots` in all. */
export const enclose = (
  expr: Expr,
  slots: number,
  slotOf: (ref: Reference) => number,
  functions: ReadonlyMap<string, Moving>,
): Enclosure => {
  const ports = Array.from({ length: slots }, () => new Port());
  const doubt: Doubt = { narrow: undefined };
  return { root: new Encloser(slotOf, ports, functions, doubt).node(expr), ports, doubt };
};
