import type { Expr } from '../../language/syntax/syntax.ts';
import { call, constant, mapRefs, quoted, rowRef } from '../rows/expr.ts';
import type { RowKey } from '../rows/key.ts';
import type { RowDefinition, RowProof, SourceEnds } from '../rows/row.ts';
import type { Row } from './layout.ts';
import { type Ring, ringText } from './ring.ts';
import { SOLVE } from './solve.ts';

/**
 * Rows that are solved where they stand in a ring. Such a row is written anew as a formula of what stands outside the ring,
 * with the formulas round it in it (`solve.ts`), so that for the rest of the sheet there is no ring. Of one that is held
 * everything in it stands at nominal; any other is solved in every case, so that the spread of what stands outside goes
 * through it. One that stands in no ring stays as it came.
 */
export class SolvedRows {
  /** As they came. */
  private readonly asked = new Map<RowKey, RowDefinition>();

  /** Takes note of what is to be solved; gives the others. */
  take(upserts: readonly RowDefinition[], gone: readonly RowKey[]): readonly RowDefinition[] {
    for (const key of gone) this.asked.delete(key);
    let found = false;
    for (const one of upserts) {
      if (one.solved) {
        this.asked.set(one.key, one);
        found = true;
      } else if (this.asked.size > 0) this.asked.delete(one.key);
    }
    return found ? upserts.filter(({ solved }) => !solved) : upserts;
  }

  get isEmpty(): boolean {
    return this.asked.size === 0;
  }

  /** Those rows over the others as they now stand. */
  written(rows: ReadonlyMap<RowKey, Row>): RowDefinition[] {
    return [...this.asked.values()].map((definition) => this.cut(definition, rows) ?? definition);
  }

  /** Formula of a row at nominal; undefined of one that is no formula. */
  private formulaOf(key: RowKey, rows: ReadonlyMap<RowKey, Row>): Expr | undefined {
    const body = this.asked.get(key)?.body ?? rows.get(key)?.definition.body;
    if (body?.kind === 'formula') return body.expr;
    return body?.kind === 'source' && typeof body.nominal !== 'number' ? body.nominal : undefined;
  }

  /** The row as a formula of what stands outside its ring; undefined where it stands in none that can be cut there alone. */
  private cut(definition: RowDefinition, rows: ReadonlyMap<RowKey, Row>): RowDefinition | undefined {
    const { key, body, solved } = definition;
    if (body.kind !== 'formula' || !solved) return undefined;
    const inside = this.between(key, rows);
    if (!inside || [...inside.keys()].some((one) => this.isCutBefore(one, definition))) return undefined;
    const definitions = [...inside.keys()].map((one) => this.asked.get(one) ?? rows.get(one)?.definition);
    // What is held stands still while a spread goes round: the ring is to be cut there.
    if (!body.held && definitions.some((one) => one && isHeld(one))) return undefined;
    const outside = new Map<RowKey, number>();
    const places = new Map([...inside.keys()].filter((one) => one !== key).map((one, i) => [one, `r${i}`]));
    let isOpen = false;
    const named = (expr: Expr): Expr =>
      mapRefs(expr, (ref) => {
        const to = ref.name as RowKey;
        if (to === key) return { ...ref, name: 'x' };
        const place = places.get(to);
        if (place) return { ...ref, name: place };
        // How far a source reaches may depend on the ring though its nominal, which is all that counts here, does not.
        const source = rows.get(to)?.definition.body;
        if (source?.kind === 'source' && typeof source.nominal === 'number' && hasFormula(source.ends)) {
          if (body.held) return constant(source.nominal);
          if (endsOf(source.ends).some((used) => inside.has(used))) isOpen = true;
        }
        const at = outside.get(to) ?? outside.size;
        outside.set(to, at);
        return { ...ref, name: `a${at}` };
      });
    const formulas = [...places.keys(), key].map((one) => named(inside.get(one) as Expr));
    if (isOpen) return undefined;
    const ring: Ring = { ...solved, formulas, outside: outside.size };
    const expr = call(SOLVE, quoted(ringText(ring)), ...[...outside.keys()].map((one) => rowRef(one)));
    // Whatever stands round the ring is in it, plans and models too: it proves nothing before it is measured itself.
    const proof: RowProof = definition.proof?.is ? definition.proof : { basis: 'model' };
    return { ...definition, body: { ...body, expr }, proof };
  }

  /** Another line is to be solved there too; or an input of the same cell before this one, which is then solved in its place. */
  private isCutBefore(one: RowKey, { key, owner }: RowDefinition): boolean {
    const asked = one === key ? undefined : this.asked.get(one);
    return asked !== undefined && (asked.owner !== owner || one < key);
  }

  /**
   * The rows round the rings that a row stands in, each after those it uses, with their formulas; itself the last. Undefined
   * where it stands in none, or some of them stand in a ring without it.
   */
  private between(key: RowKey, rows: ReadonlyMap<RowKey, Row>): Map<RowKey, Expr> | undefined {
    const formulas = new Map<RowKey, Expr>();
    const usedBy = new Map<RowKey, RowKey[]>();
    const above = new Set([key]);
    for (const at of above) {
      const formula = this.formulaOf(at, rows);
      if (!formula) continue;
      formulas.set(at, formula);
      for (const used of refsOf(formula)) {
        above.add(used);
        usedBy.set(used, [...(usedBy.get(used) ?? []), at]);
      }
    }
    // Of what it depends on, what depends on it.
    const round = new Set<RowKey>(usedBy.get(key) ?? []);
    for (const at of round) for (const user of usedBy.get(at) ?? []) if (user !== key) round.add(user);
    if (round.size === 0) return undefined;
    round.delete(key);
    const inside = new Map<RowKey, Expr>();
    const waiting = new Set(round);
    for (let left = waiting.size + 1; waiting.size < left; ) {
      left = waiting.size;
      for (const at of waiting) {
        const formula = formulas.get(at) as Expr;
        if (refsOf(formula).some((used) => waiting.has(used))) continue;
        inside.set(at, formula);
        waiting.delete(at);
      }
    }
    return waiting.size > 0 ? undefined : inside.set(key, formulas.get(key) as Expr);
  }
}

/** It stands at nominal though what it is made of moves. */
export const isHeld = ({ body }: RowDefinition): boolean =>
  body.kind === 'source' || (body.kind === 'formula' && body.held === true);

const endsOf = ({ low, high }: SourceEnds): RowKey[] =>
  [low, high].flatMap((end) => (typeof end === 'number' ? [] : refsOf(end)));

const hasFormula = ({ low, high }: SourceEnds): boolean =>
  typeof low !== 'number' || typeof high !== 'number';

function refsOf(expr: Expr): RowKey[] {
  const found = new Set<RowKey>();
  mapRefs(expr, (ref) => {
    found.add(ref.name as RowKey);
    return ref;
  });
  return [...found];
}
