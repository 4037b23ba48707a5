import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import type { Computed } from '../computed.ts';
import { Engine } from '../engine.ts';
import type { Library } from '../rows/library.ts';
import type { CellResult, SheetResults } from '../rows/results.ts';
import { settingsOf } from '../rows/whole-sheet.ts';

/**
 * A sheet of its own to try things on: nothing that is tried reaches the sheet it was taken from. What it says is the full
 * working out of the sheet as it would be, draws and all.
 */
export class TrialSheet {
  private readonly engine: Engine;
  private readonly results = new Map<string, CellResult>();
  /** Records as they were, of what is being tried. */
  private readonly before = new Map<string, CellRecord>();
  private file: SheetFile | undefined;
  private records = new Map<string, CellRecord>();

  /** @param of verdicts, and no figures where there are no limits; or all of it */
  constructor(
    readonly library: Library,
    of: 'verdicts' | 'all' = 'verdicts',
  ) {
    this.engine = new Engine(library, new Map(), of === 'verdicts');
  }

  /** Takes a sheet in; what was tried on the one before is forgotten. Of one much like it, what is another. */
  load(file: SheetFile): void {
    this.putBack();
    const old = this.records;
    this.records = new Map(file.cells.map((cell) => [cell.id, cell]));
    const isAlike = this.file && JSON.stringify(this.file.tables) === JSON.stringify(file.tables);
    this.file = file;
    if (!isAlike) {
      this.take(this.engine.load(file));
      return;
    }
    const changed = file.cells.filter((cell) => JSON.stringify(cell) !== JSON.stringify(old.get(cell.id)));
    const gone = [...old.keys()].filter((id) => !this.records.has(id));
    this.take(this.engine.apply({ changed, gone, settings: settingsOf(file) }));
  }

  /** The sheet as it was taken in. */
  get sheet(): SheetFile {
    if (!this.file) throw new Error('No sheet was taken in.');
    return this.file;
  }

  /** A line as it was taken in. */
  record(cell: string): CellRecord | undefined {
    return this.records.get(cell);
  }

  /** Puts records in the place of others of the same cells. */
  put(...records: readonly CellRecord[]): void {
    for (const record of records) {
      const old = this.records.get(record.id);
      if (old && !this.before.has(record.id)) this.before.set(record.id, old);
    }
    this.take(this.engine.apply({ changed: [...records] }));
  }

  /** Puts everything back as it was; cells that were only for the trial go. */
  putBack(added: readonly string[] = []): void {
    const changed = [...this.before.values()];
    this.before.clear();
    if (changed.length > 0 || added.length > 0) this.take(this.engine.apply({ changed, gone: [...added] }));
  }

  /**
   * Tries one record out: `look` sees the sheet with it, then it is put back.
   * @param draws verdicts that draws decide are waited for
   */
  with<T>(record: CellRecord, look: () => T, draws = false): T {
    return this.each([record], look, draws)[0] as T;
  }

  /** Tries records out one after the other, each in the place of the one before; then all is put back. */
  each<T>(records: readonly CellRecord[], look: (record: CellRecord) => T, draws = false): T[] {
    try {
      return records.map((record) => {
        this.put(record);
        if (draws) this.settle();
        return look(record);
      });
    } finally {
      this.putBack();
    }
  }

  /** What a cell says as it now stands: every verdict, once draws have decided those that wait for them. */
  result(cell: string): CellResult | undefined {
    return this.results.get(cell);
  }

  /** Has draws decide what waits for them. */
  settle(): void {
    while (this.engine.isSettling) this.take(this.engine.draw(true));
  }

  get isSettling(): boolean {
    return this.engine.isSettling;
  }

  computed(): Computed {
    return this.engine.computed();
  }

  destroy(): void {
    this.engine.destroy();
  }

  private take({ cells, gone }: SheetResults): void {
    for (const id of gone) this.results.delete(id);
    for (const cell of cells) this.results.set(cell.id, cell);
  }
}

/** A record with one of its entries changed. */
export const withEntry = (record: CellRecord, field: string, text: string): CellRecord => {
  if (field === 'entry') return { ...record, entry: text };
  if (field === 'tolerance') return { ...record, tolerance: text };
  return { ...record, inputs: { ...record.inputs, [field.slice('inputs.'.length)]: text } };
};
