import { handbook } from '../../../cells/handbook.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { AssembledCell } from './assembled.ts';
import type { SheetChange } from './change.ts';
import { faultyCell, LineFault, withoutTexts } from './faulty-cell.ts';
import type { Library } from './library.ts';
import { SheetScope } from './scope.ts';
import { assemble } from './sheet.ts';
import { signatureOf } from './signature.ts';
import { Texts } from './texts.ts';
import { WaysTaken } from './ways-taken.ts';
import { BLANK_SHEET } from './whole-sheet.ts';

/** What an edit came to: nothing of it is on the grid yet. */
export interface Taken {
  assembled: readonly AssembledCell[];
  /** Ids of lines taken away. */
  gone: readonly string[];
  /** Ids of lines that what is said of others names otherwise from now on. */
  recalled: ReadonlySet<string>;
  /** Ids of lines that may count now and did not, or the other way round. */
  judgedAnew: readonly string[];
}

/** The lines of one sheet as rows: takes edits in, and assembles the lines that an edit touches. */
export class Assembly {
  scope: SheetScope;
  settings = BLANK_SHEET.settings;
  kept = BLANK_SHEET.kept;
  readonly ways = new WaysTaken();
  /** By id, as they are on the grid. */
  readonly cells = new Map<string, AssembledCell>();
  private measured = BLANK_SHEET.measured;
  private readonly signatures = new Map<string, string>();

  constructor(
    private readonly library: Library,
    /** Lines that are set aside for a fault of the program, and why. */
    private readonly faults: ReadonlyMap<string, string>,
  ) {
    this.scope = this.newScope();
  }

  private newScope(): SheetScope {
    return new SheetScope(this.library, new Texts(handbook, this.settings.units), this.measured);
  }

  get reference(): string {
    return this.settings.referenceTemperature ?? '20 degC';
  }

  /** All lines anew, where the library has grown. */
  renew(): Taken {
    this.scopeAnew();
    return this.takeLines({}, true);
  }

  take(change: SheetChange): Taken {
    return this.takeLines(change, this.takeSettings(change));
  }

  private takeLines(change: SheetChange, afresh: boolean): Taken {
    const gone = (change.gone ?? []).filter((id) => this.scope.records.has(id));
    const open = new Set<string>(afresh ? this.scope.records.keys() : []);
    const stirred = new Set<string>();
    let renamed = afresh || gone.length > 0;
    for (const id of gone) {
      const name = this.scope.records.get(id)?.name;
      if (name) stirred.add(name);
      this.scope.records.delete(id);
      this.signatures.delete(id);
      open.delete(id);
    }
    const recalled = new Set<string>();
    for (const record of change.changed ?? []) {
      const old = this.scope.records.get(record.id);
      const called = this.scope.called(record.id);
      const before = old?.name;
      if (before !== record.name) renamed = true;
      if (before && before !== record.name) stirred.add(before);
      this.scope.records.set(record.id, this.faults.has(record.id) ? withoutTexts(record) : record);
      // Its name stands in what is said below, its role tells there a plan from a proof.
      if (old && (this.scope.called(record.id) !== called || old.role !== record.role))
        recalled.add(record.id);
      open.add(record.id);
    }
    this.scope.refresh(renamed);
    const assembled = this.assembleAll(open, stirred);
    const judgedAnew = this.ways.take(this.scope.records, this.settings.ways);
    return { assembled, gone, recalled, judgedAnew };
  }

  private takeSettings(change: SheetChange): boolean {
    if (change.settings === undefined && change.measured === undefined) return false;
    const measured = change.measured ?? this.measured;
    const settings = change.settings ?? this.settings;
    const same = measured === this.measured && JSON.stringify(settings) === JSON.stringify(this.settings);
    if (same) return false;
    this.measured = measured;
    this.settings = settings;
    this.scopeAnew();
    return true;
  }

  private scopeAnew(): void {
    const { records } = this.scope;
    this.scope = this.newScope();
    for (const [id, record] of records) this.scope.records.set(id, record);
  }

  /** Assembles the cells in `open`, and on and on those that mention a cell whose signature (name, type, figures) changed. */
  private assembleAll(open: Set<string>, stirred: Set<string>): AssembledCell[] {
    const around = {
      reference: this.reference,
      system: this.settings.units.length,
      kept: this.kept,
    };
    const done = new Map<string, AssembledCell>();
    for (;;) {
      for (const id of open) {
        const record = this.scope.records.get(id) as CellRecord;
        const signature = overLine(id, () => signatureOf(record, this.scope));
        if (this.signatures.get(id) !== signature) {
          this.signatures.set(id, signature);
          if (record.name) stirred.add(record.name);
        }
      }
      for (const id of open) {
        const record = this.scope.records.get(id) as CellRecord;
        const fault = this.faults.get(id);
        const cell =
          fault === undefined ? overLine(id, () => assemble(record, this.scope, around)) : undefined;
        done.set(id, cell ?? faultyCell(record, this.library, fault as string));
      }
      open.clear();
      if (stirred.size === 0) break;
      for (const [id, cell] of this.cells) {
        if (done.has(id) || !this.scope.records.has(id)) continue;
        // One that names what is not there may now find it, or a better guess at what was meant.
        const lost = cell.problems.some((one) => one.kind === 'unknown-name');
        if (lost || [...cell.mentions].some((name) => stirred.has(name))) open.add(id);
      }
      stirred.clear();
      if (open.size === 0) break;
    }
    return [...done.values()];
  }
}

/** Work over one line alone: if it fails, that line is named. */
const overLine = <T>(cell: string, work: () => T): T => {
  try {
    return work();
  } catch (thrown) {
    throw new LineFault(cell, thrown);
  }
};
