import type { Expr } from '../../language/syntax/syntax.ts';
import { keyOf } from '../rows/key.ts';
import type { Grid } from './grid.ts';
import type { Row } from './layout.ts';

/** Operations that are followed, in all: what lies further back is told by what it came to. */
const MOST_FOLLOWED = 60;

/** A part of a formula at nominal: what it comes to, and the largest operand of sums and differences that entered it. */
interface Weighed {
  value: number;
  scale: number;
}

const LISTS: Readonly<Record<string, (...all: number[]) => number>> = {
  MIN: Math.min,
  MAX: Math.max,
  ABS: Math.abs,
  SUM: (...all) => all.reduce((sum, one) => sum + one, 0),
};

/**
 * The largest operand of sums and differences that entered a row, back through the rows it takes in: of 3000.01 mm - 3000 mm
 * the rounding of doubles is that of 3000 mm, and what lies beside a limit by that alone stands on it.
 */
export function scaleOf(row: Row, grid: Grid): number {
  let left = MOST_FOLLOWED;

  const ofRow = (one: Row): Weighed => {
    const nominal = grid.nominal(one.slot);
    const value = typeof nominal === 'number' ? nominal : 0;
    const { body } = one.definition;
    const expr = body.kind === 'formula' ? body.expr : body.kind === 'source' ? body.nominal : undefined;
    const behind = typeof expr === 'object' ? of(expr, one) : undefined;
    return { value, scale: Math.max(Math.abs(value), behind?.scale ?? 0) };
  };

  const of = (expr: Expr, at: Row): Weighed | undefined => {
    if (left-- <= 0) return undefined;
    switch (expr.kind) {
      case 'literal':
        return { value: expr.value, scale: Math.abs(expr.value) };
      case 'ref': {
        const key = keyOf(expr);
        const used = at.uses.find((one) => one.key === key);
        return used && ofRow(used);
      }
      case 'group':
        return of(expr.of, at);
      case 'negate': {
        const found = of(expr.of, at);
        return found && { value: -found.value, scale: found.scale };
      }
      case 'binary': {
        const [a, b] = [of(expr.left, at), of(expr.right, at)];
        if (!a || !b) return undefined;
        const scale = Math.max(a.scale, b.scale);
        if (expr.op === '+') return { value: a.value + b.value, scale };
        if (expr.op === '-') return { value: a.value - b.value, scale };
        if (expr.op === '*')
          return {
            value: a.value * b.value,
            scale: Math.max(a.scale * Math.abs(b.value), Math.abs(a.value) * b.scale),
          };
        if (expr.op !== '/' || b.value === 0) return undefined;
        const [value, size] = [a.value / b.value, Math.abs(b.value)];
        return { value, scale: Math.max(a.scale / size, (Math.abs(value) * b.scale) / size) };
      }
      case 'call': {
        const list = LISTS[expr.fn];
        const all = list && expr.args.map((arg) => of(arg, at));
        if (!list || !all?.every((one) => one !== undefined)) return undefined;
        return {
          value: list(...all.map(({ value }) => value)),
          scale: Math.max(...all.map(({ scale }) => scale)),
        };
      }
      default:
        return undefined;
    }
  };
  return ofRow(row).scale;
}
