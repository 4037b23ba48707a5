import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import type { Computed } from '../computed.ts';
import { Engine } from '../engine.ts';
import type { Library } from '../rows/library.ts';
import type { CellResult, SheetResults } from '../rows/results.ts';

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

  /** @param of verdicts, and no figures where there are no limits; or all of it */
  constructor(
    readonly library: Library,
    of: 'verdicts' | 'all' = 'verdicts',
  ) {
    this.engine = new Engine(library, new Map(), of === 'verdicts');
  }

  /** Takes a sheet in; what was tried on the one before is forgotten. */
  load(file: SheetFile): void {
    this.before.clear();
    this.file = file;
    this.take(this.engine.load(file));
  }

  /** The sheet as it was taken in. */
  get sheet(): SheetFile {
    if (!this.file) throw new Error('No sheet was taken in.');
    return this.file;
  }

  /** Puts records in the place of others of the same cells. */
  put(...records: readonly CellRecord[]): void {
    const known = new Map(this.sheet.cells.map((cell) => [cell.id, cell]));
    for (const record of records) {
      const old = known.get(record.id);
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
