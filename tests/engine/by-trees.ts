import type { Computed } from '../../src/engine/computed.ts';
import { isEmpty } from '../../src/engine/network/bits.ts';
import { highColumn, lowColumn, NOMINAL } from '../../src/engine/network/grid.ts';
import type { CornerEnd, Row } from '../../src/engine/network/layout.ts';
import { keyOf, type RowKey } from '../../src/engine/rows/key.ts';
import { evaluate } from '../../src/language/compile/evaluate.ts';

/** Where a source stands: at an end, or at a value. */
export type Stand = CornerEnd | { value: number };

/** Value of a row with its sources at chosen ends or values, by walking the trees of all it depends on; NaN where it is an error. */
export function valueByTrees(
  sheet: Pick<Computed, 'grid' | 'functions'>,
  row: Row,
  end: (source: number) => Stand,
  known = new Map<string, number | boolean>(),
): number | boolean {
  const found = known.get(row.key);
  if (found !== undefined) return found;
  const { grid, functions } = sheet;
  const on = (column: number): number | boolean => {
    const value = grid.value(row.slot, column);
    return typeof value === 'object' || value === undefined ? Number.NaN : value;
  };
  const { body } = row.definition;
  let value: number | boolean = Number.NaN;
  if (isEmpty(row.sources)) value = on(NOMINAL);
  else if (row.source !== undefined) {
    const at = end(row.source);
    if (typeof at === 'object') value = at.value;
    else value = on(at < 0 ? lowColumn(row.source) : at > 0 ? highColumn(row.source) : NOMINAL);
  } else if (body.kind === 'formula') {
    const used = new Map(row.uses.map((one) => [one.key, one]));
    const seen = (key: RowKey): number | boolean => {
      const one = used.get(key);
      return one ? valueByTrees(sheet, one, end, known) : Number.NaN;
    };
    const result = evaluate(body.expr, (ref) => seen(keyOf(ref)), functions);
    value = typeof result === 'object' ? Number.NaN : result;
  }
  known.set(row.key, value);
  return value;
}
