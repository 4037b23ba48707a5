import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Expr } from '../../language/syntax/syntax.ts';
import type { AssembledCell, OutputPlan } from '../rows/assembled.ts';
import { isPart, isValidity, keyOf, partRow, type RowKey, setOf } from '../rows/key.ts';
import { type FitWord, fitWordOf, wordsOf } from './words.ts';

/** Two sizes of which one is taken from the other: bore minus journal, bush outside minus bore. */
export interface Pair {
  /** Cell that subtracts, and the output. */
  cell: string;
  output: OutputPlan;
  /** Rows of the two sizes: of the mean, where it is the least or the greatest that is taken. */
  from: RowKey;
  taken: RowKey;
  word: FitWord | undefined;
}

/** An interference set against its diameter. */
export interface Ratio {
  cell: string;
  interference: RowKey;
  diameter: RowKey;
}

/** The formula inside what assembling put round it: a guard, an own source, parentheses. */
function core(expr: Expr): Expr {
  if (expr.kind === 'group') return core(expr.of);
  if (expr.kind === 'call' && expr.fn === 'IF' && expr.args.length === 3) {
    const test = expr.args[0] as Expr;
    if (test.kind === 'compare' && test.left.kind === 'ref' && isValidity(keyOf(test.left)))
      return core(expr.args[1] as Expr);
  }
  if (expr.kind === 'binary' && expr.op === '+' && expr.right.kind === 'ref') {
    const added = keyOf(expr.right);
    if (isPart(added, 'spread') || isPart(added, 'cut')) return core(expr.left);
  }
  return expr;
}

interface Two {
  left: RowKey;
  right: RowKey;
}

const twoRefs = (expr: Expr | undefined, op: '-' | '/'): Two | undefined => {
  const inner = expr && core(expr);
  if (inner?.kind !== 'binary' || inner.op !== op) return undefined;
  const [left, right] = [core(inner.left), core(inner.right)];
  return left.kind === 'ref' && right.kind === 'ref' ? { left: keyOf(left), right: keyOf(right) } : undefined;
};

/** A size to be cut that is worked out from one that is read: bush outside = housing + squeeze. */
export interface Follower {
  /** Row of the size it is worked out from, and of what was read once it was cut. */
  base: RowKey;
  made: RowKey;
}

/** The size that a plan of the cell stands a step away from, where what was cut to it is read. */
export function followersOf(cell: AssembledCell): Follower[] {
  const found: Follower[] = [];
  for (const { planned, measured } of cell.outputs) {
    if (planned === undefined || measured === undefined) continue;
    const rows = cell.rows.filter(({ key }) => key === planned || key === partRow(planned, 'formula'));
    for (const { body } of rows) {
      const expr = body.kind === 'formula' ? body.expr : body.kind === 'source' ? body.nominal : undefined;
      const inner = expr !== undefined && typeof expr !== 'number' ? core(expr) : undefined;
      if (inner?.kind !== 'binary' || (inner.op !== '+' && inner.op !== '-')) continue;
      const left = core(inner.left);
      if (left.kind === 'ref') found.push({ base: setOf(keyOf(left)), made: measured });
    }
  }
  return found;
}

/** Differences and interferences per diameter that a cell works out. */
export function relationsOf(
  cell: AssembledCell,
  record: CellRecord | undefined,
): { pairs: Pair[]; ratios: Ratio[] } {
  const pairs: Pair[] = [];
  const ratios: Ratio[] = [];
  const exprs = new Map<RowKey, Expr>();
  for (const row of cell.rows) {
    if (row.body.kind === 'formula') exprs.set(row.key, row.body.expr);
    else if (row.body.kind === 'source' && typeof row.body.nominal !== 'number')
      exprs.set(row.key, row.body.nominal);
  }
  if (exprs.size === 0) return { pairs, ratios };
  for (const output of cell.outputs) {
    const key = output.planned;
    if (key === undefined) continue;
    // The least and the greatest of a difference are of the same two sizes.
    if (record?.role !== 'cell' && output.name !== 'value') continue;
    const expr = exprs.get(partRow(key, 'formula')) ?? exprs.get(key);
    const difference = twoRefs(expr, '-');
    const ratio = output.quantity === 'interference per diameter' ? twoRefs(expr, '/') : undefined;
    if (!difference && !ratio) continue;
    const own = record?.role === 'cell' ? '' : wordsOf(record);
    const words = `${own} ${output.name} ${output.label ?? ''}`.replaceAll('_', ' ').toLowerCase();
    if (difference && setOf(difference.left) !== setOf(difference.right))
      pairs.push({
        cell: cell.id,
        output,
        from: setOf(difference.left),
        taken: setOf(difference.right),
        word: fitWordOf(words),
      });
    if (ratio && fitWordOf(words) === 'interference')
      ratios.push({
        cell: cell.id,
        interference: setOf(ratio.left),
        diameter: setOf(ratio.right),
      });
  }
  return { pairs, ratios };
}
