import type { KeptValue, SheetFile } from '../../shared/sheet/format.ts';
import { Engine } from './engine.ts';
import type { SheetChange } from './rows/change.ts';
import { faultResult } from './rows/fault.ts';
import { LineFault, outputNames } from './rows/faulty-cell.ts';
import type { Library } from './rows/library.ts';
import type { CellResult, Contribution, SheetResults } from './rows/results.ts';
import { BLANK_SHEET, type Sheet, settingsOf } from './rows/whole-sheet.ts';

/** So many lines may be at fault at once; more are taken for a fault of the whole. */
const MOST = 8;

/**
 * An engine that a fault of the program does not stop: what fails over one line costs that line alone, which then says
 * so, and no figure is ever left that is not of now. On a throw the engine is built anew; where it throws again the line
 * is looked for without which it does not, and that one is set aside. While any is, each edit tries it again.
 */
export class GuardedEngine {
  private engine: Engine | undefined;
  private sheet: Sheet = { ...BLANK_SHEET, records: new Map() };
  /** Lines set aside, and why. */
  private faults: ReadonlyMap<string, string> = new Map();
  private rev = 0;
  /** Drawing failed since the last edit. */
  private hasFailed = false;

  constructor(private readonly library: Library) {
    this.engine = new Engine(library);
  }

  load(file: SheetFile): SheetResults {
    const before = [...this.sheet.records.keys()];
    const records = new Map(file.cells.map((cell) => [cell.id, cell]));
    this.sheet = { ...this.sheet, records, settings: settingsOf(file), kept: file.tables ?? [] };
    return this.answer(
      before.filter((id) => !records.has(id)),
      (engine) => engine.load(file),
    );
  }

  apply(change: SheetChange): SheetResults {
    const { records, settings, measured } = this.sheet;
    const gone = (change.gone ?? []).filter((id) => records.delete(id));
    for (const record of change.changed ?? []) records.set(record.id, record);
    this.sheet.settings = change.settings ?? settings;
    this.sheet.measured = change.measured ?? measured;
    return this.answer(gone, (engine) => engine.apply(change));
  }

  /** The whole sheet anew, where the library has grown. */
  renew(): SheetResults {
    return this.answer([], (engine) => engine.renew());
  }

  /** True while some verdict waits for draws. */
  get isSettling(): boolean {
    return !this.hasFailed && this.engine?.isSettling === true;
  }

  /** Draws on, by one block or to the next look. Where that fails no more is drawn, and what waits is never settled. */
  draw(toLook = false): SheetResults {
    try {
      const drawn = this.engine?.draw(toLook);
      if (drawn && drawn.cells.length > 0) return { ...drawn, rev: ++this.rev };
    } catch {
      this.hasFailed = true;
    }
    return { rev: this.rev, cells: [], gone: [] };
  }

  private answer(gone: readonly string[], work: (engine: Engine) => SheetResults): SheetResults {
    this.hasFailed = false;
    if (this.engine && this.faults.size === 0) {
      try {
        return { ...work(this.engine), rev: ++this.rev };
      } catch {
        // What it was left in is not known: it is built anew.
      }
    }
    return { rev: ++this.rev, cells: this.anew(), gone: [...gone] };
  }

  /** Everything by an engine built anew, without the lines over which it fails. */
  private anew(): CellResult[] {
    const faults = new Map<string, string>();
    let before = this.faults;
    for (;;) {
      const made = this.build(this.sheet, faults);
      if ('cells' in made) {
        this.replace(made.engine, faults);
        return made.cells;
      }
      const { thrown } = made;
      const why = thrown instanceof Error ? thrown.message : String(thrown);
      // What failed before will fail again, more often than not.
      const known = [...before].filter(([id]) => this.sheet.records.has(id));
      before = new Map();
      if (known.length > 0) for (const [id, reason] of known) faults.set(id, reason);
      else {
        const line = thrown instanceof LineFault ? thrown.cell : this.lineAtFault(faults);
        if (line === undefined || faults.has(line) || faults.size === MOST) return this.nothing(why);
        faults.set(line, why);
      }
    }
  }

  private build(
    sheet: Sheet,
    faults: ReadonlyMap<string, string>,
  ): { engine: Engine; cells: CellResult[] } | { thrown: unknown } {
    const engine = new Engine(this.library, faults);
    try {
      return { engine, cells: engine.begin(sheet).cells };
    } catch (thrown) {
      discard(engine);
      return { thrown };
    }
  }

  /** The first line in the order of the sheet with which, and all before it, the engine fails. */
  private lineAtFault(faults: ReadonlyMap<string, string>): string | undefined {
    const all = [...this.sheet.records];
    let good = 0;
    let bad = all.length;
    while (bad - good > 1) {
      const middle = (good + bad) >> 1;
      const made = this.build({ ...this.sheet, records: new Map(all.slice(0, middle)) }, faults);
      if ('engine' in made) {
        discard(made.engine);
        good = middle;
      } else bad = middle;
    }
    return all[good]?.[0];
  }

  private nothing(why: string): CellResult[] {
    this.replace(undefined, new Map());
    return [...this.sheet.records.values()].map((record) =>
      faultResult(record.id, outputNames(record, this.library), this.sheet.settings.rule, why),
    );
  }

  private replace(engine: Engine | undefined, faults: ReadonlyMap<string, string>): void {
    if (this.engine) discard(this.engine);
    this.engine = engine;
    this.faults = faults;
  }

  budget(cell: string, output: string): Contribution[] {
    return this.engine?.budget(cell, output) ?? [];
  }

  tables(): KeptValue[] {
    return this.engine?.tables() ?? [];
  }

  chain(cell: string): { upstream: string[]; downstream: string[] } {
    return this.engine?.chain(cell) ?? { upstream: [], downstream: [] };
  }

  destroy(): void {
    this.engine?.destroy();
  }
}

/** One that failed may fail at that too. */
const discard = (engine: Engine): void => {
  try {
    engine.destroy();
  } catch {
    // It is let go of all the same.
  }
};
