import { type Problem, problem } from '../../../shared/problem.ts';
import { evaluate } from '../../language/compile/evaluate.ts';
import type { Expr, Reference } from '../../language/syntax/syntax.ts';
import type { EngineFunction } from './functions.ts';
import { DIVISION, type GridError, type GridValue, OVERFLOW } from './grid.ts';

/** An error that came from another row, on its way through the evaluation of a tree. */
interface Carried extends Problem {
  error: GridError;
}

const isCarried = (found: Problem): found is Carried => 'error' in found;

/**
 * The error of one case of a row, in the words the grid has for it: that of a row it uses, handed on with the row where
 * it began, or its own. Undefined where there is none after all.
 */
export function errorOf(
  expr: Expr,
  slot: number,
  seen: (ref: Reference) => GridValue | string | undefined,
  functions: ReadonlyMap<string, EngineFunction>,
): GridError | undefined {
  const lookup = (ref: Reference): number | boolean | string | Problem => {
    const value = seen(ref);
    if (value === undefined) return Number.NaN;
    if (typeof value !== 'object') return value;
    return { ...problem('upstream', value.message), error: value } as Carried;
  };
  const found = evaluate(expr, lookup, functions);
  if (typeof found !== 'object')
    return Number.isNaN(Number(found)) ? { root: slot, message: OVERFLOW } : undefined;
  return isCarried(found) ? found.error : { root: slot, message: gridWords(found) };
}

/** The evaluator words its problems for people; the grid only says what happened. */
const gridWords = ({ cause, said, message }: Problem): string =>
  cause === 'division' ? DIVISION : cause === 'overflow' ? OVERFLOW : (said ?? message);
