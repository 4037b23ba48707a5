import type { CellRecord } from '../../../shared/sheet/format.ts';
import { cellRow } from '../rows/key.ts';
import type { Row } from './layout.ts';

const MEASURED = 1;
const TO_BE_CUT = 2;

/**
 * Tells a plan from a proof: a figure is judged as a part when something it depends on was measured and nothing it
 * depends on is a size still to be cut (chosen, and not yet measured).
 */
export class Provenance {
  private readonly known = new Map<Row, number>();

  constructor(private readonly recordOf: (id: string) => CellRecord | undefined) {}

  isProof(row: Row): boolean {
    return (this.known.get(row) ?? this.of(row)) === MEASURED;
  }

  /** Walks up without recursion: a chain may be thousands long. */
  private of(row: Row): number {
    const way: { row: Row; next: number }[] = [{ row, next: 0 }];
    for (let at = way.at(-1); at; at = way.at(-1)) {
      if (at.next === 0 && !this.known.has(at.row)) this.known.set(at.row, this.itself(at.row) ?? 0);
      const used = this.itself(at.row) === undefined ? at.row.uses[at.next++] : undefined;
      if (used) {
        if (!this.known.has(used)) way.push({ row: used, next: 0 });
        continue;
      }
      way.pop();
      if (this.itself(at.row) !== undefined) continue;
      let all = 0;
      for (const one of at.row.uses) all |= this.known.get(one) ?? 0;
      this.known.set(at.row, all);
    }
    return this.known.get(row) ?? 0;
  }

  /** What a row is whatever it depends on. */
  private itself(row: Row): number | undefined {
    // What was read, wherever it stands; a formula in its place is worked out, and is what it depends on.
    if (row.definition.read) return MEASURED;
    const record = this.recordOf(row.owner);
    if (record?.role === 'chosen' && row.key === cellRow(record.id)) return TO_BE_CUT;
    // What a library cell decides (the next undersize, so many shims) is done only once it is measured.
    const { body } = row.definition;
    return record?.role === 'cell' && body.kind === 'formula' && body.held ? TO_BE_CUT : undefined;
  }
}
