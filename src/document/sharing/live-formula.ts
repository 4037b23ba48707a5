import { parseFormula } from '../../language/parse.ts';
import type { Expr, Reference } from '../../language/syntax/syntax.ts';

/** Functions that every spreadsheet computes as we do, on any unit. */
const SAME = new Set(['ABS', 'MAX', 'MIN', 'SQRT', 'SUM']);

/** The place of a referred value in the workbook, in SI; undefined where it is not a number there. */
export type Address = (ref: Reference) => string | undefined;

/**
 * A formula as a spreadsheet computes it, in SI, or undefined where it is more than arithmetic between numbers of the
 * sheet. Everything inside another operation is put in parentheses: spreadsheets read -2^2 otherwise than the sheet does.
 */
export function liveFormula(entry: string, address: Address): string | undefined {
  const { expr, problems, spread } = parseFormula(entry);
  if (!expr || spread || problems.length > 0) return undefined;
  return written(expr, address);
}

function written(expr: Expr, address: Address): string | undefined {
  switch (expr.kind) {
    case 'literal':
      return Number.isFinite(expr.value) ? String(expr.value) : undefined;
    case 'ref':
      return address(expr);
    case 'group':
      return written(expr.of, address);
    case 'negate': {
      const of = written(expr.of, address);
      return of && `(-(${of}))`;
    }
    case 'binary': {
      const [left, right] = [written(expr.left, address), written(expr.right, address)];
      return left && right && `((${left})${expr.op}(${right}))`;
    }
    case 'call': {
      if (!SAME.has(expr.fn)) return undefined;
      const args = expr.args.map((arg) => written(arg, address));
      return args.every((arg) => arg !== undefined) ? `${expr.fn}(${args.join(',')})` : undefined;
    }
    default:
      return undefined;
  }
}
