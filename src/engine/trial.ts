import { evaluate } from '../language/evaluate.ts';
import { isEmpty } from './bits.ts';
import type { EngineFunction } from './functions.ts';
import { type Grid, highColumn, lowColumn, NOMINAL } from './grid.ts';
import type { Row } from './layout.ts';
import type { Network } from './network.ts';

export type End = -1 | 0 | 1;

/**
 * Evaluates one row with its sources at chosen ends by walking the trees directly: for the few trials that decide a
 * corner, where rewriting grid columns would cost far more than the walk.
 */
export class Trial {
  constructor(
    private readonly network: Network,
    private readonly grid: Grid,
    private readonly functions: ReadonlyMap<string, EngineFunction>,
  ) {}

  /** Value of `row`, NaN where it is an error. */
  value(row: Row, end: (source: number) => End): number {
    const known = new Map<Row, number | boolean>();
    const worth = (of: Row): number | boolean => {
      const nominal = (column: number) => {
        const value = this.grid.value(of.slot, column);
        return typeof value === 'object' || value === undefined ? Number.NaN : value;
      };
      if (isEmpty(of.sources)) return nominal(NOMINAL);
      if (of.source !== undefined) {
        const at = end(of.source);
        return nominal(at < 0 ? lowColumn(of.source) : at > 0 ? highColumn(of.source) : NOMINAL);
      }
      let value = known.get(of);
      if (value === undefined) {
        const body = of.definition.body;
        const result =
          body.kind === 'formula'
            ? evaluate(
                body.expr,
                (ref) => {
                  const used = this.network.rows.get(ref.name);
                  return used ? worth(used) : Number.NaN;
                },
                this.functions,
              )
            : Number.NaN;
        value = typeof result === 'object' ? Number.NaN : result;
        known.set(of, value);
      }
      return value;
    };
    const value = worth(row);
    return typeof value === 'number' ? value : Number.NaN;
  }
}
