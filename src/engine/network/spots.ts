import type { Expr, Reference } from '../../language/syntax/syntax.ts';
import { eachRef, plus } from '../rows/expr.ts';
import type { RowKey } from '../rows/key.ts';
import type { ProofSpot } from '../rows/row.ts';

/** A formula in which each spot is a quantity, so that it can be asked what it moves with. */
interface Spotted {
  expr: Expr;
  /** Values of the quantities that were written in, by the names they have in the formula. */
  values: ReadonlyMap<string, number>;
  /** By spot: its name in the formula; undefined where it is not found. */
  names: readonly (string | undefined)[];
  /** What is taken to a step, each with the name its result has in the formula: no slope shows what a step hides. */
  steps: readonly Step[];
}

export interface Step {
  name: string;
  /** Names of the rows and spots that are taken to the step. */
  of: readonly string[];
}

const STEPS = /^(INT|ROUND|ROUNDUP|ROUNDDOWN|CEILING|FLOOR|MROUND)$/;

/** A number becomes a name; to what a function gives a name of nothing is added, so that it shows also where it gives nothing. */
export function withSpots(expr: Expr, spots: readonly ProofSpot[]): Spotted {
  const values = new Map<string, number>();
  const names: (string | undefined)[] = spots.map(() => undefined);
  const steps: { name: string; of: string[] }[] = [];
  // No key of a row begins so.
  const named = (name: string, value: number): Reference => {
    values.set(name, value);
    return { kind: 'ref', name: name as RowKey, from: 0, to: 0 };
  };
  const written = (i: number, value: number): Reference => {
    const name = `\u0000${i}`;
    names[i] = name;
    return named(name, value);
  };
  const walk = (at: Expr): Expr => {
    const i = spots.findIndex(({ from, to }) => from === at.from && to === at.to);
    switch (at.kind) {
      case 'literal':
        return i >= 0 ? written(i, at.value) : at;
      case 'ref':
        if (i >= 0) names[i] = at.name;
        return at;
      case 'text':
        return at;
      case 'negate':
      case 'group':
        return { ...at, of: walk(at.of) };
      case 'binary':
      case 'compare':
        return { ...at, left: walk(at.left), right: walk(at.right) };
      case 'call': {
        const call = { ...at, args: at.args.map(walk) };
        const given = i >= 0 ? plus(call, written(i, 0)) : call;
        if (!STEPS.test(at.fn)) return given;
        const name = `\u0000step ${steps.length}`;
        const of: string[] = [];
        for (const arg of call.args) eachRef(arg, (ref) => of.push(ref.name));
        steps.push({ name, of });
        return plus(given, named(name, 0));
      }
    }
  };
  return { expr: walk(expr), values, names, steps };
}
