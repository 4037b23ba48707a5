import type { CellRecord } from '../../../shared/sheet/format.ts';
import { type Fork, forksOf, takenInstead } from '../../../shared/sheet/ways.ts';

/** Which of several ways to an end are taken on one sheet. */
export class WaysTaken {
  private forks: readonly Fork[] = [];

  /** @returns ids of lines that may count now and did not, or the other way round. */
  take(
    records: ReadonlyMap<string, CellRecord>,
    ways: Readonly<Record<string, string>> | undefined,
  ): string[] {
    const forks = forksOf(records.values(), ways);
    if (JSON.stringify(forks) === JSON.stringify(this.forks)) return [];
    this.forks = forks;
    return [...records.values()].filter(({ way }) => way !== undefined).map(({ id }) => id);
  }

  /** The way taken in place of that of a line; undefined where the line counts. */
  instead(record: CellRecord | undefined): string | undefined {
    return record && takenInstead(record, this.forks);
  }
}
