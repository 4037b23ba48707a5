import { isStepped, weighed } from '../../language/compile/ties.ts';
import type { Expr } from '../../language/syntax/syntax.ts';
import type { RowKey } from '../rows/key.ts';
import type { RowDefinition } from '../rows/row.ts';

/**
 * Ties across cells: formulas that compare, or have steps, are given the largest operand that entered also where it
 * entered in another row. For this they are written anew when one of the rows they were followed to changes.
 */
export class TiesAcross {
  /** Formulas as they came, by row. */
  private readonly formulas = new Map<RowKey, Expr>();
  /** Rows that compare or have steps, as they came, with the rows that were looked at for them. */
  private readonly tied = new Map<RowKey, { definition: RowDefinition; followed: ReadonlySet<RowKey> }>();

  /** The rows to be taken in, with those that are written otherwise because of them. */
  weigh(upserts: readonly RowDefinition[], gone: readonly RowKey[]): readonly RowDefinition[] {
    const moved = new Set<RowKey>();
    for (const key of gone) {
      this.tied.delete(key);
      if (this.formulas.delete(key)) moved.add(key);
    }
    const tied: RowDefinition[] = [];
    for (const definition of upserts) {
      const { key } = definition;
      const formula = followable(definition);
      if (formula !== this.formulas.get(key)) moved.add(key);
      if (formula) this.formulas.set(key, formula);
      else this.formulas.delete(key);
      this.tied.delete(key);
      const { body } = definition;
      if (body.kind === 'formula' && hasTies(body.expr)) tied.push(definition);
    }
    if (moved.size > 0)
      for (const { definition, followed } of this.tied.values())
        for (const key of followed)
          if (moved.has(key)) {
            tied.push(definition);
            break;
          }
    if (tied.length === 0) return upserts;
    const written = new Map(tied.map((definition) => [definition.key, this.write(definition)]));
    const all = upserts.map((definition) => {
      const found = written.get(definition.key);
      written.delete(definition.key);
      return found ?? definition;
    });
    return [...all, ...written.values()];
  }

  private write(definition: RowDefinition): RowDefinition {
    const { body } = definition;
    if (body.kind !== 'formula') return definition;
    const followed = new Set<RowKey>();
    const expr = weighed(body.expr, ({ name }) => {
      followed.add(name as RowKey);
      return this.formulas.get(name as RowKey);
    });
    this.tied.set(definition.key, { definition, followed });
    return expr === body.expr ? definition : { ...definition, body: { ...body, expr } };
  }
}

/**
 * Formulas through which a difference goes on: a size that is chosen by one too, though what it depends on moves it no more.
 * One that says for itself what it is to proof is left alone.
 */
const followable = ({ body, proof, solved }: RowDefinition): Expr | undefined => {
  // Round a ring it would come back to where it began.
  if (solved) return undefined;
  if (body.kind === 'source') return typeof body.nominal === 'number' ? undefined : body.nominal;
  if (body.kind !== 'formula') return undefined;
  return body.held || (!proof?.is && !proof?.aside) ? body.expr : undefined;
};

const hasTies = (expr: Expr): boolean => {
  switch (expr.kind) {
    case 'compare':
      return true;
    case 'call':
      return isStepped(expr.fn) || expr.args.some(hasTies);
    case 'group':
    case 'negate':
      return hasTies(expr.of);
    case 'binary':
      return hasTies(expr.left) || hasTies(expr.right);
    default:
      return false;
  }
};
