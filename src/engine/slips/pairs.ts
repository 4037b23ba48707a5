import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Expr } from '../../language/syntax/syntax.ts';
import type { AssembledCell, OutputPlan } from '../rows/assembled.ts';
import { READING_OUTPUTS } from '../rows/readings.ts';
import { type FitWord, fitWordOf, wordsOf } from './words.ts';

/** Two sizes of which one is taken from the other: bore minus journal, bush outside minus bore. */
export interface Pair {
  /** Cell that subtracts, and the output. */
  cell: string;
  output: OutputPlan;
  /** Rows of the two sizes, without `.least` and the like. */
  from: string;
  taken: string;
  word: FitWord | undefined;
}

/** An interference set against its diameter. */
export interface Ratio {
  cell: string;
  interference: string;
  diameter: string;
}

const ASIDE = new RegExp(`\\.(${READING_OUTPUTS.join('|')})$`);

/** Row of the set of readings that a row of its figures belongs to. */
export const baseKey = (key: string): string => key.replace(ASIDE, '');

/** The formula inside what assembling put round it: a guard, an own source, parentheses. */
function core(expr: Expr): Expr {
  if (expr.kind === 'group') return core(expr.of);
  if (expr.kind === 'call' && expr.fn === 'IF' && expr.args.length === 3) {
    const test = expr.args[0] as Expr;
    if (test.kind === 'compare' && test.left.kind === 'ref' && test.left.name.includes('?'))
      return core(expr.args[1] as Expr);
  }
  if (expr.kind === 'binary' && expr.op === '+' && expr.right.kind === 'ref') {
    if (/(~own|!cut)$/.test(expr.right.name)) return core(expr.left);
  }
  return expr;
}

interface Two {
  left: string;
  right: string;
}

const twoRefs = (expr: Expr | undefined, op: '-' | '/'): Two | undefined => {
  const inner = expr && core(expr);
  if (inner?.kind !== 'binary' || inner.op !== op) return undefined;
  const [left, right] = [core(inner.left), core(inner.right)];
  return left.kind === 'ref' && right.kind === 'ref' ? { left: left.name, right: right.name } : undefined;
};

/** Differences and interferences per diameter that a cell works out. */
export function relationsOf(
  cell: AssembledCell,
  record: CellRecord | undefined,
): { pairs: Pair[]; ratios: Ratio[] } {
  const pairs: Pair[] = [];
  const ratios: Ratio[] = [];
  const exprs = new Map<string, Expr>();
  for (const row of cell.rows) {
    if (row.body.kind === 'formula') exprs.set(row.key, row.body.expr);
    else if (row.body.kind === 'source' && typeof row.body.nominal !== 'number')
      exprs.set(row.key, row.body.nominal);
  }
  if (exprs.size === 0) return { pairs, ratios };
  for (const output of cell.outputs) {
    const key = output.planned;
    if (key === undefined || output.aside === undefined ? key === undefined : false) continue;
    const expr = exprs.get(`${key}!formula`) ?? exprs.get(key as string);
    const difference = twoRefs(expr, '-');
    const ratio = output.quantity === 'interference per diameter' ? twoRefs(expr, '/') : undefined;
    if (!difference && !ratio) continue;
    const own = record?.role === 'cell' ? '' : wordsOf(record);
    const words = `${own} ${output.name} ${output.label ?? ''}`.replaceAll('_', ' ').toLowerCase();
    if (difference && baseKey(difference.left) !== baseKey(difference.right))
      pairs.push({
        cell: cell.id,
        output,
        from: baseKey(difference.left),
        taken: baseKey(difference.right),
        word: fitWordOf(words),
      });
    if (ratio && fitWordOf(words) === 'interference')
      ratios.push({
        cell: cell.id,
        interference: baseKey(ratio.left),
        diameter: baseKey(ratio.right),
      });
  }
  return { pairs, ratios };
}
