import type { DecisionRule, KeptValue, SheetFile } from '../../shared/sheet/format.ts';
import { Bounds } from './bounds/bounds.ts';
import { faultOf } from './bounds/fault.ts';
import { WorstCases } from './bounds/worst.ts';
import { chainOf } from './chain-of.ts';
import type { Computed } from './computed.ts';
import { Corners } from './corners/corners.ts';
import { ByDraws } from './draws/by-draws.ts';
import type { Asked } from './draws/tally.ts';
import { Enclosures } from './network/enclosures.ts';
import { brokenColumn, budgetOf, figureOf } from './network/figure.ts';
import { type EngineFunction, engineFunctions } from './network/functions.ts';
import { Grid } from './network/grid.ts';
import { sheetFunctions } from './network/handbook.ts';
import type { BrokenCase, Row } from './network/layout.ts';
import { Network } from './network/network.ts';
import { Provenance } from './network/provenance.ts';
import { solveFunction } from './network/solve.ts';
import { limitFigures, wearSide } from './report/limit-figures.ts';
import { reportCell } from './report/report.ts';
import type { AssembledCell, OutputPlan } from './rows/assembled.ts';
import { Assembly, type Taken } from './rows/assembly.ts';
import type { SheetChange } from './rows/change.ts';
import type { RowKey } from './rows/key.ts';
import type { Library } from './rows/library.ts';
import type { CellResult, Contribution, Figure, SheetResults } from './rows/results.ts';
import { type Sheet, settingsOf } from './rows/whole-sheet.ts';
import { Inquiry } from './slips/inquiry.ts';

/**
 * One view of one sheet: takes edits, gives the results of the cells that changed. The same in a worker and in Node.
 *
 * An edit assembles the cells it touches into rows, the network writes what differs to the grid, the corners are
 * seated anew where signs turned, and figures are read off for the rows that moved.
 */
export class Engine {
  private readonly functions: ReadonlyMap<string, EngineFunction>;
  private readonly grid: Grid;
  private readonly network: Network;
  private readonly bounds: Bounds;
  private readonly corners: Corners;
  private readonly assembly: Assembly;
  /** Rows whose worst case is wanted, there or not: everything that is shown or judged. */
  private readonly wanted = new Set<RowKey>();
  private readonly inquiry = new Inquiry();
  private readonly byDraws: ByDraws;
  /** Of what asks where a figure comes from. */
  private readonly enclosures: Enclosures;
  private provenance: Provenance;
  private rev = 0;

  constructor(
    library: Library,
    /** Lines that are set aside for a fault of the program, and why. */
    faults: ReadonlyMap<string, string> = new Map(),
    /** Works out the spread of what verdicts go by and of nothing else, for whoever asks for verdicts alone. */
    private readonly isVerdictsOnly = false,
  ) {
    const plain = [...engineFunctions(library.functions), ...sheetFunctions];
    const functions = [...plain, solveFunction(new Map(plain.map((fn) => [fn.name, fn])))];
    this.assembly = new Assembly(library, faults);
    this.grid = new Grid(functions);
    const byName = new Map(functions.map((fn) => [fn.name, fn]));
    this.functions = byName;
    this.network = new Network(this.grid, byName, (owner) => this.assembly.scope.called(owner));
    this.bounds = new Bounds(this.grid, byName, this.network);
    this.corners = new Corners(this.network, this.grid, new WorstCases(this.network, this.grid));
    this.byDraws = new ByDraws(this.network, this.grid, byName);
    this.enclosures = new Enclosures(byName);
    this.provenance = this.newProvenance();
  }

  private newProvenance(): Provenance {
    return new Provenance(this.network, this.grid, this.enclosures);
  }

  /** Takes a whole sheet in, in place of whatever was there. */
  load(file: SheetFile): SheetResults {
    this.assembly.kept = file.tables ?? [];
    const present = new Set(file.cells.map((cell) => cell.id));
    return this.apply({
      changed: file.cells,
      gone: [...this.assembly.scope.records.keys()].filter((id) => !present.has(id)),
      settings: settingsOf(file),
    });
  }

  /** Takes a sheet in where there is none yet. */
  begin({ records, settings, measured, kept }: Sheet): SheetResults {
    this.assembly.kept = kept;
    return this.apply({ changed: [...records.values()], settings, measured });
  }

  /** The whole sheet anew, where the library has grown. */
  renew(): SheetResults {
    return this.settle(this.assembly.renew());
  }

  apply(change: SheetChange): SheetResults {
    return this.settle(this.assembly.take(change));
  }

  private settle({ assembled, gone, recalled, judgedAnew }: Taken): SheetResults {
    const { cells } = this.assembly;
    const alone = assembled.length === 1 ? assembled[0] : undefined;
    const upserts = alone ? alone.rows : assembled.flatMap((cell) => cell.rows);
    const removed: RowKey[] = [];
    let present: ReadonlySet<RowKey> | undefined;
    const forget = (old: AssembledCell | undefined, now: AssembledCell | undefined) => {
      if (!old || (now && hasSameKeys(old, now))) return;
      present ??= new Set(upserts.map((row) => row.key));
      for (const row of old.rows) if (!present.has(row.key)) removed.push(row.key);
    };
    for (const cell of assembled) forget(cells.get(cell.id), cell);
    for (const id of gone) {
      forget(cells.get(id), undefined);
      cells.delete(id);
    }
    for (const key of removed) this.wanted.delete(key);
    if (removed.length > 0)
      this.corners.dismiss(
        removed.map((key) => this.network.rows.get(key)).filter((row) => row !== undefined),
      );
    const relaid = this.network.update(upserts, removed);
    this.network.recall(recalled);
    for (const cell of assembled) {
      cells.set(cell.id, cell);
      for (const plan of cell.outputs) this.want(plan);
    }
    for (const row of relaid) if (this.wanted.has(row.key)) row.wanted = true;
    const touched = this.network.settle();
    for (const row of relaid) touched.add(row.slot);
    this.bounds.settle(touched, this.network.order);
    const targets: Row[] = [];
    this.addTargets(targets, touched, 0);
    const before = touched.size;
    this.corners.seat(targets, relaid.size > 0 || removed.length > 0);
    add(touched, this.network.settle());
    // What the corners touched besides: its effects are what they were, for they are read in other cases.
    if (touched.size > before) this.addTargets(targets, touched, before);

    const owners = new Set<string>(judgedAnew);
    for (const cell of assembled) owners.add(cell.id);
    for (const row of targets) {
      const figure = figureOf(this.network, this.grid, row, this.corners.endsOf(row));
      row.figure = figure;
      // One case without a value leaves the centre without one.
      row.broken = figure && Number.isNaN(figure.centre) ? this.brokenCase(row) : undefined;
      if (figure && row.broken?.unknown) figure.low = figure.high = Number.NaN;
    }
    for (const slot of touched) {
      const row = this.network.rowAt(slot);
      if (row) owners.add(row.owner);
    }
    this.provenance = this.newProvenance();
    add(owners, this.byDraws.forget(touched));
    // A question changes no verdict.
    if (!this.isVerdictsOnly) add(owners, this.inquiry.ask(assembled, gone, owners, this.standing()));
    return { rev: ++this.rev, cells: this.report(owners), gone: [...gone] };
  }

  /** True while some verdict waits for draws: until then it is being settled. */
  get isSettling(): boolean {
    return this.byDraws.isSettling;
  }

  /** Draws on, by one block or to the next look; gives what that settled or moved on. */
  draw(toLook = false): SheetResults {
    const owners = this.byDraws.step(toLook);
    if (owners.size === 0) return { rev: this.rev, cells: [], gone: [] };
    return { rev: ++this.rev, cells: this.report(owners), gone: [] };
  }

  private standing() {
    return {
      scope: this.assembly.scope,
      network: this.network,
      figure: this.figureAt,
      nominal: (key: RowKey) => {
        const row = this.network.rows.get(key);
        const value = row ? this.grid.nominal(row.slot) : undefined;
        return typeof value === 'number' ? value : undefined;
      },
      reference: this.assembly.reference,
      system: this.assembly.settings.units.length,
    };
  }

  private readonly figureAt = (key: RowKey): Figure | undefined => this.network.rows.get(key)?.figure;

  /** Of the rows touched, but the first `skip`, those whose worst case is wanted. */
  private addTargets(to: Row[], touched: Iterable<number>, skip: number): void {
    let n = 0;
    for (const slot of touched) {
      if (n++ < skip) continue;
      const row = this.network.rowAt(slot);
      if (row?.wanted) to.push(row);
    }
  }

  /** Wants the worst case of what an output shows or is judged by. */
  private want(plan: OutputPlan): void {
    if (!this.isVerdictsOnly) {
      this.wantRow(plan.planned);
      this.wantRow(plan.measured);
      this.wantRow(plan.difference);
      this.wantRow(plan.replanned);
      this.wantRow(plan.tolerance);
      this.wantRow(plan.ownTolerance);
      this.wantRow(plan.limits?.least);
      this.wantRow(plan.limits?.greatest);
    }
    const { limits } = plan;
    if (!limits) return;
    this.wantRow(limits.lower);
    this.wantRow(limits.upper);
    this.wantRow(limits.wear);
    this.wantRow(limits.lowerMargin);
    this.wantRow(limits.upperMargin);
    this.wantRow(limits.wearAbove);
    this.wantRow(limits.wearBelow);
  }

  private wantRow(key: RowKey | undefined): void {
    if (key === undefined || this.wanted.has(key)) return;
    this.wanted.add(key);
    const row = this.network.rows.get(key);
    if (row) row.wanted = true;
  }

  /** The first source at whose end a row cannot be computed. */
  private brokenCase(row: Row): BrokenCase | undefined {
    const broken = brokenColumn(this.network, row);
    const source = broken ? this.network.sourceRow(broken.source) : undefined;
    const body = source?.definition.body;
    if (!broken || !source || body?.kind !== 'source') return undefined;
    const { column } = broken;
    const own = this.grid.value(source.slot, column);
    const here = this.grid.value(row.slot, column);
    return {
      label: body.ends.label,
      unknown: typeof own === 'object',
      column,
      ...(typeof here === 'object' ? { error: here } : {}),
    };
  }

  private report(owners: ReadonlySet<string>): CellResult[] {
    const from = {
      network: this.network,
      grid: this.grid,
      rule: this.assembly.settings.rule,
      units: this.assembly.settings.units,
      figure: this.figureAt,
      nameOf: (id: string) => this.assembly.scope.called(id),
      fault: (row: Row) => faultOf(row, this.bounds, this.network),
      standing: (row: Row) => this.provenance.of(row),
      drawnOf: (asked: Asked) => this.byDraws.drawnOf(asked),
      mostWide: (margin: Row, rule: DecisionRule) => this.byDraws.mostWide(margin, rule),
      slips: (id: string) => this.inquiry.slipsOf(id),
      aside: (id: string) => this.assembly.ways.instead(this.assembly.scope.records.get(id)),
    };
    const results: CellResult[] = [];
    for (const id of owners) {
      const cell = this.assembly.cells.get(id);
      if (cell) results.push(reportCell(cell, from));
    }
    return results;
  }

  /** What each source contributes to an output as it stands, largest first. */
  budget(cell: string, output: string): Contribution[] {
    const plan = this.assembly.cells.get(cell)?.outputs.find((one) => one.name === output);
    const key = plan?.measured ?? plan?.planned;
    const row = key === undefined ? undefined : this.network.rows.get(key);
    if (!row || typeof this.grid.nominal(row.slot) !== 'number') return [];
    return budgetOf(this.network, this.grid, row);
  }

  /** Every table value the sheet is computed with, for a file that shall keep its numbers. */
  tables(): KeptValue[] {
    const found = new Map<string, KeptValue>();
    for (const cell of this.assembly.cells.values())
      for (const one of cell.tables) found.set(`${one.table}/${one.key}/${one.column}`, one);
    return [...found.keys()].sort().map((key) => found.get(key) as KeptValue);
  }

  /** Cells a cell depends on, and cells that depend on it. */
  chain(cell: string): { upstream: string[]; downstream: string[] } {
    return chainOf(cell, this.assembly.cells);
  }

  /** The rows as they stand, for what evaluates the same trees elsewhere. */
  computed(): Computed {
    const figure = this.figureAt;
    return {
      network: this.network,
      grid: this.grid,
      cells: this.assembly.cells,
      functions: this.functions,
      scope: this.assembly.scope,
      settings: this.assembly.settings,
      figure,
      wearMargin: ({ limits }) =>
        limits?.wear && wearSide(limitFigures(limits, { figure })) === 'high'
          ? limits.wearAbove
          : limits?.wearBelow,
    };
  }

  /** How large the sheet is on the grid. */
  size(): { rows: number; cells: number; cornerColumns: number } {
    let cells = 0;
    for (const row of this.network.rows.values()) cells += 1 + (row.cases?.columns.length ?? 0);
    return { rows: this.network.rows.size, cells, cornerColumns: this.network.corners.length };
  }

  destroy(): void {
    this.grid.destroy();
  }
}

const add = <T>(to: Set<T>, more: Iterable<T>): void => {
  for (const one of more) to.add(one);
};

const hasSameKeys = (a: AssembledCell, b: AssembledCell): boolean => {
  if (a.rows.length !== b.rows.length) return false;
  for (let i = 0; i < a.rows.length; i++) if (a.rows[i]?.key !== b.rows[i]?.key) return false;
  return true;
};
