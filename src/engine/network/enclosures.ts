import { type Enclosure, enclose, type Moving } from '../../language/bounds/enclose.ts';
import type { Expr } from '../../language/syntax/syntax.ts';
import { keyOf } from '../rows/key.ts';
import type { Row } from './layout.ts';

/**
 * Formulas of rows as operations over boxes, kept from one state of the sheet to the next, for making them takes longer than
 * running them. An enclosure holds what was last asked of it, so whoever asks has a store of its own.
 */
export class Enclosures {
  private readonly known = new WeakMap<readonly Row[], { expr: Expr; own: Enclosure }>();

  constructor(private readonly functions: ReadonlyMap<string, Moving>) {}

  /** That of a row's formula, a port for each row it uses. */
  of(row: Row, expr: Expr): Enclosure {
    const known = this.known.get(row.uses);
    if (known?.expr === expr) return known.own;
    const slots = new Map(row.uses.map((one, i) => [one.key, i]));
    const own = enclose(
      expr,
      row.uses.length,
      (ref) => slots.get(keyOf(ref)) ?? row.uses.length,
      this.functions,
    );
    this.known.set(row.uses, { expr, own });
    return own;
  }
}
