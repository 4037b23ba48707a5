import type { CellRecord } from '../../shared/sheet/format.ts';
import type { Row } from './layout.ts';

const MEASURED = 1;
const TO_BE_CUT = 2;

/**
 * Tells a plan from a proof: a figure is judged as a part when something it hangs on was measured and nothing it
 * hangs on is a size still to be cut (chosen, and not yet measured).
 */
export class Provenance {
  private readonly known = new Map<Row, number>();

  constructor(private readonly recordOf: (id: string) => CellRecord | undefined) {}

  isProof(row: Row): boolean {
    return this.of(row) === MEASURED;
  }

  private of(row: Row): number {
    const known = this.known.get(row);
    if (known !== undefined) return known;
    this.known.set(row, 0);
    const found = this.find(row);
    this.known.set(row, found);
    return found;
  }

  private find(row: Row): number {
    if (row.key.includes('@')) return MEASURED;
    const record = this.recordOf(row.owner);
    if (record?.role === 'measured') return MEASURED;
    if (record?.role === 'chosen' && row.key === record.id) return TO_BE_CUT;
    let all = 0;
    for (const used of row.uses) all |= this.of(used);
    return all;
  }
}
