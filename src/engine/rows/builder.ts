import { type Problem, problem } from '../../../shared/problem.ts';
import type { Expr } from '../../language/syntax/syntax.ts';
import type { AssembledCell } from './assembled.ts';
import type { RowBody, RowDefinition, SourceEnds } from './row.ts';

/** Gathers the rows and remarks of one cell while it is being assembled. */
export class CellBuilder {
  readonly cell: AssembledCell;

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

  private add(key: string, body: RowBody): string {
    this.cell.rows.push({ key, owner: this.cell.id, body } satisfies RowDefinition);
    return key;
  }

  number(key: string, value: number): string {
    return this.add(key, { kind: 'number', value });
  }

  formula(key: string, expr: Expr, held = false): string {
    return this.add(key, held ? { kind: 'formula', expr, held } : { kind: 'formula', expr });
  }

  source(key: string, nominal: number | Expr, ends: SourceEnds): string {
    return this.add(key, { kind: 'source', nominal, ends });
  }

  /** A row without a value, and the reason; told on the cell too when it is the cell's own text that is at fault. */
  problem(key: string, what: Problem, field?: string): string {
    const own: Problem = { ...what, origin: this.name, originId: this.cell.id };
    if (field) {
      own.field = field;
      this.cell.problems.push(own);
    }
    return this.add(key, { kind: 'problem', problem: own });
  }

  /** `optional`: it may stay blank, so what hangs on it inside the cell is idle, not waiting. */
  blank(key: string, message: string, optional = false): string {
    const place = { origin: this.name, originId: this.cell.id, ...(optional ? { optional } : {}) };
    return this.add(key, { kind: 'problem', problem: problem('blank', message, place) });
  }

  has(key: string): boolean {
    return this.cell.rows.some((row) => row.key === key);
  }
}
