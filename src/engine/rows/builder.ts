import { type Problem, problem } from '../../../shared/problem.ts';
import type { Expr } from '../../language/syntax/syntax.ts';
import type { AssembledCell } from './assembled.ts';
import { constant, minus, times } from './expr.ts';
import type { RowKey } from './key.ts';
import type { RowBody, RowDefinition, RowProof, SolvedIn, SourceEnds } from './row.ts';

/** Gathers the rows and remarks of one cell while it is being assembled. */
export class CellBuilder {
  readonly cell: AssembledCell;
  private readonly keys = new Set<RowKey>();

  constructor(
    id: string,
    /** Name or label of the cell for people. */
    readonly name: string,
  ) {
    this.cell = {
      id,
      rows: [],
      outputs: [],
      validity: [],
      usual: [],
      problems: [],
      cautions: [],
      echoes: {},
      tables: [],
      mentions: new Set(),
      feeds: new Set(),
    };
  }

  private get place(): { name: string; id: string } {
    return { name: this.name, id: this.cell.id };
  }

  private add(key: RowKey, body: RowBody, proof?: RowProof, solved?: SolvedIn): RowKey {
    this.keys.add(key);
    this.cell.rows.push({
      key,
      owner: this.cell.id,
      body,
      ...(proof ? { proof } : {}),
      ...(solved ? { solved } : {}),
    } satisfies RowDefinition);
    return key;
  }

  number(key: RowKey, value: number, proof?: RowProof): RowKey {
    return this.add(key, { kind: 'number', value }, proof);
  }

  formula(key: RowKey, expr: Expr, held = false, proof?: RowProof): RowKey {
    return this.add(key, held ? { kind: 'formula', expr, held } : { kind: 'formula', expr }, proof);
  }

  /** A formula that is solved where it stands in a ring. */
  solved(key: RowKey, expr: Expr, held: boolean, solved: SolvedIn, proof?: RowProof): RowKey {
    return this.add(key, held ? { kind: 'formula', expr, held } : { kind: 'formula', expr }, proof, solved);
  }

  source(key: RowKey, nominal: number | Expr, ends: SourceEnds, proof?: RowProof): RowKey {
    return this.add(key, { kind: 'source', nominal, ends }, proof);
  }

  /**
   * A row without a value, and the reason; told on the cell too when it is the cell's own text that is at fault.
   * @param at the line that is at fault, where it is not this one
   */
  problem(key: RowKey, what: Problem, field?: string, at = this.place): RowKey {
    const own: Problem = { ...what, origin: at.name, originId: at.id };
    if (field) {
      own.field = field;
      this.cell.problems.push(own);
    }
    return this.add(key, { kind: 'problem', problem: own });
  }

  /**
   * `optional`: it may stay blank, so what depends on it inside the cell is idle, not waiting.
   * @param at the line that is blank, where it is not this one
   */
  blank(key: RowKey, message: string, optional = false, at = this.place): RowKey {
    const place = { origin: at.name, originId: at.id, ...(optional ? { optional } : {}) };
    return this.add(key, { kind: 'problem', problem: problem('blank', message, place) });
  }

  /** What a source of this cell adds, at 95 % either way. */
  reach(key: RowKey): Expr {
    const body = this.cell.rows.find((row) => row.key === key)?.body;
    if (body?.kind !== 'source') return constant(0);
    const { low, high, distribution, k, dof } = body.ends;
    const [from, to] = [low, high].map((end) => (typeof end === 'number' ? constant(end) : end)) as [
      Expr,
      Expr,
    ];
    const share = distribution === 'rectangular' ? 2 / Math.sqrt(3) : Number.isFinite(dof) ? 1 : 2 / k;
    return times(constant(share / 2), minus(to, from));
  }

  has(key: RowKey): boolean {
    return this.keys.has(key);
  }
}
