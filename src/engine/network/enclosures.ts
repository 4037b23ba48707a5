import { type Enclosure, enclose, type Moving } from '../../language/bounds/enclose.ts';
import type { Expr } from '../../language/syntax/syntax.ts';
import { keyOf } from '../rows/key.ts';
import type { ProofSpot } from '../rows/row.ts';
import type { Row } from './layout.ts';
import { type Step, withSpots } from './spots.ts';

/**
 * Formulas of rows as operations over boxes, kept from one state of the sheet to the next, for making them takes longer than
 * running them. An enclosure holds what was last asked of it, so whoever asks has a store of its own.
 */
export class Enclosures {
  private readonly known = new WeakMap<readonly Row[], { expr: Expr; own: Enclosure }>();
  private readonly spots = new WeakMap<
    readonly Row[],
    { expr: Expr; of: readonly ProofSpot[]; made: Spotted }
  >();

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

  /** The same with each spot of the formula a quantity of its own, in ports behind those of the rows. */
  spotted(row: Row, expr: Expr, of: readonly ProofSpot[]): Spotted {
    const known = this.spots.get(row.uses);
    if (known?.expr === expr && known.of === of) return known.made;
    const { expr: written, values, names, steps } = withSpots(expr, of);
    const slots = new Map<string, number>(row.uses.map((one, i) => [one.key, i]));
    for (const name of values.keys()) slots.set(name, slots.size);
    const own = enclose(written, slots.size, (ref) => slots.get(keyOf(ref)) ?? slots.size, this.functions);
    const made = { own, slots, values, names, steps };
    this.spots.set(row.uses, { expr, of, made });
    return made;
  }
}

/** A formula whose spots are quantities, and the ports of its rows and its spots by name. */
interface Spotted {
  own: Enclosure;
  slots: ReadonlyMap<string, number>;
  /** Values of what was written in, by name. */
  values: ReadonlyMap<string, number>;
  /** By spot: its name; undefined where it is not found. */
  names: readonly (string | undefined)[];
  steps: readonly Step[];
}
