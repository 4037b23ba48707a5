/**
 * From a tree to the text of a HyperFormula formula, without `=`. Precedence is ours, never the grid's: every operation
 * inside another is put in parentheses, but for chains of one level (a + b - c), which both read from the left. So
 * -2^2 is -4 and 2^3^2 is 512, where the grid alone would say 4 and 64.
 */

import { unwrapped } from '../syntax/parts.ts';
import { continues } from '../syntax/size.ts';
import type { Expr, Reference, Scope } from '../syntax/syntax.ts';
import { settledTest } from './check.ts';
import { argumentsOf, scaleOfBoth } from './ties.ts';

/** Put before the name of each of our functions in the grid, so that none is taken for one of its own. */
const FUNCTION_PREFIX = 'FW_';

/** Left to the grid, which does not compute the branches it does not need. */
const NATIVE = new Set(['IF', 'AND', 'OR', 'NOT', 'TRUE', 'FALSE']);

/** Full precision, lower-case exponent; what is no finite number becomes an error of the grid. */
const numberText = (value: number): string => (Number.isFinite(value) ? String(value) : '#NUM!');

/** `address` gives the text that stands for a reference: a cell of the grid, or a quoted text for a choice. */
export const toEngine = (
  expr: Expr,
  address: (ref: Reference) => string,
  isBlank?: Scope['isBlank'],
): string => {
  const inner = (of: Expr): string => {
    const bare = unwrapped(of);
    const atom = bare.kind === 'ref' || bare.kind === 'text' || (bare.kind === 'literal' && bare.value >= 0);
    return atom ? write(bare) : `(${write(bare)})`;
  };
  const write = (of: Expr): string => {
    switch (of.kind) {
      case 'literal':
        return numberText(of.value);
      case 'ref':
        return address(of);
      case 'text':
        return `"${of.text.replaceAll('"', '""')}"`;
      case 'group':
        return write(of.of);
      case 'negate':
        return `-${inner(of.of)}`;
      case 'compare':
        return `${FUNCTION_PREFIX}COMPARE("${of.op}",${write(of.left)},${write(of.right)},${write(scaleOfBoth(of))})`;
      case 'binary': {
        if (of.op === '^') return `${FUNCTION_PREFIX}POWER(${write(of.left)},${write(of.right)})`;
        const left = continues(of, of.left) ? write(of.left) : inner(of.left);
        return `${left}${of.op}${inner(of.right)}`;
      }
      case 'call':
        return writeCall(of);
    }
  };
  const writeCall = (of: Extract<Expr, { kind: 'call' }>): string => {
    const settled = settledTest(of, isBlank);
    if (settled !== undefined) return settled ? 'TRUE()' : 'FALSE()';
    if (of.fn === 'IF') {
      const test = settledTest(of.args[0] as Expr, isBlank);
      if (test !== undefined) return write(of.args[test ? 1 : 2] as Expr);
    }
    const name = NATIVE.has(of.fn) ? of.fn : FUNCTION_PREFIX + of.fn;
    return `${name}(${argumentsOf(of).map(write).join(',')})`;
  };
  return write(expr);
};
