import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Computed } from '../computed.ts';
import { Engine } from '../engine.ts';
import type { Library } from '../rows/library.ts';
import type { CellResult } from '../rows/results.ts';
import type { Sheet } from '../rows/whole-sheet.ts';

/** Looks of drawing that a trial waits for: what is not settled by then is told as settling. */
const LOOKS = 40;

/** A record with one of its entries changed. */
export const withEntry = (record: CellRecord, field: string, text: string): CellRecord => {
  if (field === 'entry') return { ...record, entry: text };
  if (field === 'tolerance') return { ...record, tolerance: text };
  return { ...record, inputs: { ...record.inputs, [field.slice('inputs.'.length)]: text } };
};

/**
 * A second engine on the same sheet, in which edits are tried out and taken back: the sheet itself never knows. Built when
 * first asked for; after that it takes over what changed since.
 */
export class WhatIf {
  private engine: Engine | undefined;
  private records = new Map<string, CellRecord>();
  private settings = '';
  private readonly results = new Map<string, CellResult>();

  constructor(private readonly library: Library) {}

  /** Brings it to where the sheet stands. */
  take(sheet: Sheet): void {
    const { measured, settings, kept } = sheet;
    const around = JSON.stringify([settings, measured, kept]);
    if (this.engine && around === this.settings) {
      const changed = [...sheet.records.values()].filter((record) => this.records.get(record.id) !== record);
      const gone = [...this.records.keys()].filter((id) => !sheet.records.has(id));
      if (changed.length > 0 || gone.length > 0) this.note(this.engine.apply({ changed, gone }));
      for (const id of gone) this.results.delete(id);
    } else {
      this.destroy();
      this.engine = new Engine(this.library);
      this.note(this.engine.begin({ ...sheet, records: new Map(sheet.records) }));
    }
    this.settings = around;
    this.records = new Map(sheet.records);
  }

  resultOf(cell: string): CellResult | undefined {
    return this.results.get(cell);
  }

  /** The verdicts as they stand, draws and all. */
  settle(): void {
    const { engine } = this;
    for (let look = 0; engine?.isSettling && look < LOOKS; look++) this.note(engine.draw(true));
  }

  /**
   * Tries an edit out: `look` sees the rows and the cells that changed; then it is taken back.
   * @param draws verdicts that draws decide are waited for
   */
  trial<T>(
    record: CellRecord,
    look: (book: Computed, changed: ReadonlyMap<string, CellResult>) => T,
    draws = false,
  ): T {
    const engine = this.engine as Engine;
    const before = this.records.get(record.id) as CellRecord;
    try {
      const changed = new Map(engine.apply({ changed: [record] }).cells.map((cell) => [cell.id, cell]));
      for (let i = 0; draws && engine.isSettling && i < LOOKS; i++)
        for (const cell of engine.draw(true).cells) changed.set(cell.id, cell);
      return look(engine.computed(), changed);
    } finally {
      engine.apply({ changed: [before] });
    }
  }

  recordOf(cell: string): CellRecord | undefined {
    return this.records.get(cell);
  }

  book(): Computed {
    return (this.engine as Engine).computed();
  }

  private note({ cells }: { cells: readonly CellResult[] }): void {
    for (const cell of cells) this.results.set(cell.id, cell);
  }

  destroy(): void {
    this.engine?.destroy();
    this.engine = undefined;
    this.results.clear();
  }
}
