import type { Expr, Reference } from '../../language/syntax/syntax.ts';
import { times } from '../rows/expr.ts';
import type { RowKey } from '../rows/key.ts';
import type { ProofSpot } from '../rows/row.ts';

/** A formula in which each spot is a quantity, so that it can be asked what it moves with. */
interface Spotted {
  expr: Expr;
  /** Values of the quantities that were written in, by the names they have in the formula. */
  values: ReadonlyMap<string, number>;
  /** By spot: its name in the formula; undefined where it is not found. */
  names: readonly (string | undefined)[];
}

/** A number becomes a name, and what a function gives goes by a factor of one. */
export function withSpots(expr: Expr, spots: readonly ProofSpot[]): Spotted {
  const values = new Map<string, number>();
  const names: (string | undefined)[] = spots.map(() => undefined);
  if (spots.length === 0) return { expr, values, names };
  const written = (i: number, value: number): Reference => {
    // No key of a row begins so.
    const name = `\u0000${i}`;
    names[i] = name;
    values.set(name, value);
    return { kind: 'ref', name: name as RowKey, from: 0, to: 0 };
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
        return i >= 0 ? times(call, written(i, 1)) : call;
      }
    }
  };
  return { expr: walk(expr), values, names };
}
