import { evaluate } from '../language/evaluate.ts';
import { isEmpty } from './bits.ts';
import type { EngineFunction } from './functions.ts';
import { type Grid, highColumn, lowColumn, NOMINAL } from './grid.ts';
import type { Row } from './layout.ts';

export type End = -1 | 0 | 1;

/**
 * Evaluates one row with its sources at chosen ends by walking the trees directly: for the few trials that decide a
 * corner, where rewriting grid columns would cost far more than the walk.
 */
export class Trial {
  constructor(
    private readonly grid: Grid,
    private readonly functions: ReadonlyMap<string, EngineFunction>,
  ) {}

  /** The row last asked about and what it hangs on, each after those it uses. */
  private chain: { row: Row; rows: readonly Row[] } | undefined;

  /** Rows or references may have changed. */
  forget(): void {
    this.chain = undefined;
  }

  private chainOf(row: Row): readonly Row[] {
    if (this.chain?.row === row) return this.chain.rows;
    const all = new Set<Row>([row]);
    for (const one of all) {
      if (one.source !== undefined || isEmpty(one.sources)) continue;
      for (const used of one.uses) all.add(used);
    }
    const rows = [...all].sort((a, b) => a.place - b.place);
    this.chain = { row, rows };
    return rows;
  }

  /** Value of `row`, NaN where it is an error. Goes up the chain without recursion: a chain may be thousands long. */
  value(row: Row, end: (source: number) => End): number {
    const known = new Map<string, number | boolean>();
    for (const of of this.chainOf(row)) {
      const on = (column: number): number | boolean => {
        const value = this.grid.value(of.slot, column);
        return typeof value === 'object' || value === undefined ? Number.NaN : value;
      };
      const { body } = of.definition;
      if (isEmpty(of.sources)) known.set(of.key, on(NOMINAL));
      else if (of.source !== undefined) {
        const at = end(of.source);
        known.set(of.key, on(at < 0 ? lowColumn(of.source) : at > 0 ? highColumn(of.source) : NOMINAL));
      } else {
        const result =
          body.kind === 'formula'
            ? evaluate(body.expr, (ref) => known.get(ref.name) ?? Number.NaN, this.functions)
            : Number.NaN;
        known.set(of.key, typeof result === 'object' ? Number.NaN : result);
      }
    }
    const value = known.get(row.key);
    return typeof value === 'number' ? value : Number.NaN;
  }
}
