/**
 * A tree as nested functions over blocks of draws, for Monte Carlo and maps: one call computes `n` values of a formula.
 * No code is generated from text, which the page's Content-Security-Policy would refuse. A draw without a result is NaN.
 */

import type { BinaryOperator, Expr, Reference } from '../syntax/syntax.ts';
import type { Computable } from './evaluate.ts';
import { argumentsOf, comparison, scaleOfBoth } from './ties.ts';

/** Values of one quantity, one for each draw; logical values are 1 and 0. */
type Block = Float64Array;

/**
 * Takes the blocks by slot and gives the formula's block, of which the first `n` values count. The result is the closure's
 * own and is overwritten by its next call, unless the formula is a plain reference: then it is the block referred to.
 */
export type BlockFunction = (blocks: readonly Block[], n: number) => Block;

/** A constant stays one number instead of a block of equal ones; a text only ever goes to a trade function. */
type Node = { constant: number | string } | { run: BlockFunction };

const isConstant = (node: Node): node is { constant: number | string } => 'constant' in node;

/** A buffer that grows to the largest block asked for. */
const buffer = (): ((n: number) => Block) => {
  let own = new Float64Array(0);
  return (n) => {
    if (own.length < n) own = new Float64Array(n);
    return own;
  };
};

const asRun = (node: Node): BlockFunction => {
  if (!isConstant(node)) return node.run;
  const value = Number(node.constant);
  let own = new Float64Array(0);
  return (_, n) => {
    if (own.length < n) own = new Float64Array(n).fill(value);
    return own;
  };
};

const eachDraw = (a: Node, of: (x: number) => number): Node => {
  const [run, take] = [asRun(a), buffer()];
  return {
    run: (blocks, n) => {
      const x = run(blocks, n);
      const out = take(n);
      for (let i = 0; i < n; i += 1) out[i] = of(x[i]!);
      return out;
    },
  };
};

/** Each draw on its own: 1 where the comparison holds, 0 where it does not. */
const compared = (
  holds: (x: number, y: number, scale: number) => boolean,
  a: Node,
  b: Node,
  largest: Node,
): Node => {
  const [left, right, scale, take] = [asRun(a), asRun(b), asRun(largest), buffer()];
  return {
    run: (blocks, n) => {
      const x = left(blocks, n);
      const y = right(blocks, n);
      const most = scale(blocks, n);
      const out = take(n);
      for (let i = 0; i < n; i += 1) {
        const apart = x[i]! - y[i]! - most[i]!;
        out[i] = holds(x[i]!, y[i]!, most[i]!) ? 1 : 0;
        if (Number.isNaN(apart)) out[i] = Number.NaN;
      }
      return out;
    },
  };
};

const finite = (x: number): number => (Number.isFinite(x) ? x + 0 : Number.NaN);

/**
 * Each operator has a loop of its own: a call a draw would cost more than the operation. What is not finite is told by its
 * difference from itself, and put in after: a choice of two numbers would make an object of each.
 */
const binary = (op: Exclude<BinaryOperator, '^'>, a: Node, b: Node): Node => {
  const [left, right, take] = [asRun(a), asRun(b), buffer()];
  const loops: Record<typeof op, BlockFunction> = {
    '+': (blocks, n) => {
      const x = left(blocks, n);
      const y = right(blocks, n);
      const out = take(n);
      for (let i = 0; i < n; i += 1) {
        const z = x[i]! + y[i]! + 0;
        out[i] = z;
        if (z - z !== 0) out[i] = Number.NaN;
      }
      return out;
    },
    '-': (blocks, n) => {
      const x = left(blocks, n);
      const y = right(blocks, n);
      const out = take(n);
      for (let i = 0; i < n; i += 1) {
        const z = x[i]! - y[i]! + 0;
        out[i] = z;
        if (z - z !== 0) out[i] = Number.NaN;
      }
      return out;
    },
    '*': (blocks, n) => {
      const x = left(blocks, n);
      const y = right(blocks, n);
      const out = take(n);
      for (let i = 0; i < n; i += 1) {
        const z = x[i]! * y[i]! + 0;
        out[i] = z;
        if (z - z !== 0) out[i] = Number.NaN;
      }
      return out;
    },
    '/': (blocks, n) => {
      const x = left(blocks, n);
      const y = right(blocks, n);
      const out = take(n);
      for (let i = 0; i < n; i += 1) {
        const z = x[i]! / y[i]! + 0;
        out[i] = z;
        if (z - z !== 0) out[i] = Number.NaN;
      }
      return out;
    },
  };
  return { run: loops[op] };
};

type Call = Extract<Expr, { kind: 'call' }>;

class Builder {
  constructor(
    private readonly slotOf: (ref: Reference) => number | string,
    private readonly functions: ReadonlyMap<string, Computable>,
  ) {}

  node(expr: Expr): Node {
    switch (expr.kind) {
      case 'literal':
        return { constant: expr.value };
      case 'text':
        return { constant: expr.text };
      case 'group':
        return this.node(expr.of);
      case 'ref': {
        const slot = this.slotOf(expr);
        return typeof slot === 'string' ? { constant: slot } : { run: (blocks) => blocks[slot] as Block };
      }
      case 'negate':
        return eachDraw(this.node(expr.of), (x) => 0 - x);
      case 'compare':
        return compared(
          comparison(expr.op),
          this.node(expr.left),
          this.node(expr.right),
          this.node(scaleOfBoth(expr)),
        );
      case 'binary': {
        const [left, right] = [this.node(expr.left), this.node(expr.right)];
        return expr.op === '^' ? this.computed('POWER', [left, right]) : binary(expr.op, left, right);
      }
      case 'call':
        return expr.fn === 'IF'
          ? this.choice(expr)
          : this.computed(
              expr.fn,
              argumentsOf(expr).map((arg) => this.node(arg)),
            );
    }
  }

  /** Both branches are computed and one is taken: a fault in the other leaves no trace. */
  private choice(expr: Call): Node {
    const [test, then, otherwise] = expr.args.map((arg) => asRun(this.node(arg))) as [
      BlockFunction,
      BlockFunction,
      BlockFunction,
    ];
    const take = buffer();
    return {
      run: (blocks, n) => {
        const [c, a, b, out] = [test(blocks, n), then(blocks, n), otherwise(blocks, n), take(n)];
        for (let i = 0; i < n; i += 1) {
          const test = c[i]!;
          out[i] = a[i]!;
          if (test === 0) out[i] = b[i]!;
          else if (Number.isNaN(test)) out[i] = Number.NaN;
        }
        return out;
      },
    };
  }

  private computed(name: string, nodes: Node[]): Node {
    const fn = this.functions.get(name);
    const take = buffer();
    const fixed = nodes.map((node) => (isConstant(node) ? node.constant : undefined));
    const runs = nodes.map((node) => (isConstant(node) ? undefined : node.run));
    const args: (number | string)[] = fixed.map((constant) => constant ?? 0);
    return {
      run: (blocks, n) => {
        const inputs = runs.map((run) => run?.(blocks, n));
        const out = take(n);
        const [only] = inputs;
        if (fn && only && inputs.length === 1) {
          for (let i = 0; i < n; i += 1) {
            const x = only[i]!;
            const result = Number.isNaN(x) ? Number.NaN : fn.compute(x as never);
            out[i] = typeof result === 'object' ? Number.NaN : finite(Number(result));
          }
          return out;
        }
        for (let i = 0; i < n; i += 1) {
          let known = fn !== undefined;
          for (let j = 0; j < inputs.length; j += 1) {
            const input = inputs[j];
            if (!input) continue;
            args[j] = input[i]!;
            known &&= !Number.isNaN(input[i]);
          }
          const result = known ? fn!.compute(...(args as never[])) : Number.NaN;
          out[i] = typeof result === 'object' ? Number.NaN : finite(Number(result));
        }
        return out;
      },
    };
  }
}

/** `slotOf` gives the block a reference reads, or the text a choice stands for. */
export const compileClosure = (
  expr: Expr,
  slotOf: (ref: Reference) => number | string,
  functions: ReadonlyMap<string, Computable>,
): BlockFunction => asRun(new Builder(slotOf, functions).node(expr));
