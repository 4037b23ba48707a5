import { compileClosure } from '../language/closure.ts';
import type { Expr, Reference } from '../language/syntax.ts';
import { errorOf } from './case-errors.ts';
import type { EngineFunction } from './functions.ts';
import { type Grid, type GridError, type GridValue, NOMINAL } from './grid.ts';
import type { Compiled, CornerEnd, Port, Row, RowCases } from './layout.ts';

/**
 * Every case of every row but its nominal, which the grid computes: each source at its low and at its high end, and the
 * corners. A row has a value only in the cases of sources upstream; elsewhere it equals its nominal. All cases of a row
 * are computed at once by its formula over blocks, in the order in which rows use each other, from what changed
 * downward as far as anything changes.
 */
export class Cases {
  private readonly stale = new Set<Row>();
  /** By place in the order of rows: 1 while its cases have to be computed. */
  private dirty = new Uint8Array(0);
  private layouts = 0;

  constructor(
    private readonly grid: Grid,
    private readonly functions: ReadonlyMap<string, EngineFunction>,
  ) {}

  /** Lays out a row that follows others, for the given columns. */
  lay(row: Row, expr: Expr, columns: readonly number[]): void {
    const cases = this.fresh(row, columns);
    cases.formula = this.compiled(expr, row);
    row.cases = cases;
    this.stale.add(row);
  }

  /** Lays out a source; `stands` is the end it is at in each of its columns. */
  laySource(row: Row, columns: readonly number[], stands: readonly CornerEnd[]): void {
    const body = row.definition.body;
    if (body.kind !== 'source') return;
    const cases = this.fresh(row, columns);
    cases.stands = stands;
    if (typeof body.ends.low !== 'number') cases.low = this.compiled(body.ends.low, row);
    if (typeof body.ends.high !== 'number') cases.high = this.compiled(body.ends.high, row);
    row.cases = cases;
    this.stale.add(row);
  }

  /** The same formula in other columns. */
  relay(row: Row, columns: readonly number[], stands: readonly CornerEnd[] = []): void {
    const old = row.cases;
    if (!old) return;
    const { formula, low, high } = old;
    row.cases = { ...this.fresh(row, columns), formula, low, high, stands };
    this.stale.add(row);
  }

  /** A source is taken otherwise in the same columns, or stands about another nominal. */
  restate(row: Row): void {
    if (row.cases) this.stale.add(row);
  }

  clear(row: Row): void {
    row.cases = undefined;
    this.stale.delete(row);
  }

  private fresh(row: Row, columns: readonly number[]): RowCases {
    const n = columns.length;
    const ports = row.uses.map((used) => ({
      row: used,
      block: new Float64Array(n),
      at: new Int32Array(n),
      layout: -1,
    }));
    return {
      columns,
      at: new Map(columns.map((column, i) => [column, i])),
      values: new Float64Array(n).fill(Number.NaN),
      errors: undefined,
      layout: ++this.layouts,
      ports,
      blocks: [...ports.map((port) => port.block), new Float64Array(n).fill(Number.NaN)],
      formula: undefined,
      low: undefined,
      high: undefined,
      stands: [],
    };
  }

  private compiled(expr: Expr, row: Row): Compiled {
    const slots = new Map(row.uses.map((used, i) => [used.key, i]));
    return { expr, run: compileClosure(expr, (ref) => slots.get(ref.name) ?? slots.size, this.functions) };
  }

  /** Value of a row in a case; undefined where it has none there and equals its nominal. */
  value(row: Row, column: number): GridValue | undefined {
    const cases = row.cases;
    const at = cases?.at.get(column);
    if (!cases || at === undefined) return undefined;
    const error = cases.errors?.get(column);
    if (error) return error;
    const value = cases.values[at] as number;
    const nominal = this.grid.value(row.slot, NOMINAL);
    if (typeof nominal === 'object') return nominal;
    return typeof nominal === 'boolean' ? value !== 0 : value;
  }

  /**
   * Computes what is stale, and below `touched` rows whose nominal changed; adds the rows in which a case changed.
   * `order` has each row after those it uses.
   */
  settle(touched: Set<number>, rowAt: (slot: number) => Row | undefined, order: readonly Row[]): void {
    if (touched.size === 0 && this.stale.size === 0) return;
    if (this.dirty.length < order.length) this.dirty = new Uint8Array(2 * order.length);
    const { dirty } = this;
    let from = order.length;
    const mark = (row: Row): void => {
      if (!row.cases) return;
      dirty[row.place] = 1;
      if (row.place < from) from = row.place;
    };
    for (const row of this.stale) mark(row);
    this.stale.clear();
    for (const slot of touched) {
      const row = rowAt(slot);
      if (!row) continue;
      mark(row);
      for (const user of row.usedBy) mark(user);
    }
    for (let place = from; place < order.length; place++) {
      if (dirty[place] === 0) continue;
      dirty[place] = 0;
      const row = order[place] as Row;
      if (!row.cases || !this.compute(row, row.cases)) continue;
      touched.add(row.slot);
      for (const user of row.usedBy) mark(user);
    }
  }

  /** Computes every case of a row; true when one of them changed. */
  private compute(row: Row, cases: RowCases): boolean {
    const wrong = cases.errors !== undefined;
    cases.errors = undefined;
    const found = cases.formula ? this.follow(row, cases, cases.formula) : this.ends(row, cases);
    const { values } = cases;
    let changed = wrong || cases.errors !== undefined;
    for (let i = 0; i < values.length; i++) {
      if (Object.is(values[i], found[i])) continue;
      values[i] = found[i] as number;
      changed = true;
    }
    return changed;
  }

  private follow(row: Row, cases: RowCases, { run, expr }: Compiled): Float64Array {
    const { columns, ports, blocks } = cases;
    for (const port of ports) this.gather(port, cases);
    const values = run(blocks, columns.length);
    for (let i = 0; i < columns.length; i++) {
      if (!Number.isNaN(values[i])) continue;
      const column = columns[i] as number;
      const error = errorOf(expr, row.slot, (ref) => this.seen(row, ref.name, column), this.functions);
      if (error) this.note(cases, column, error);
    }
    return values;
  }

  private note(cases: RowCases, column: number, error: GridError): void {
    cases.errors ??= new Map();
    cases.errors.set(column, error);
  }

  /** Nominal and both ends of a source, in the order its columns ask for. */
  private ends(row: Row, cases: RowCases): Float64Array {
    const body = row.definition.body;
    const nominal = this.grid.value(row.slot, NOMINAL);
    const values = new Float64Array(cases.columns.length);
    if (body.kind !== 'source' || typeof nominal !== 'number') return values.fill(Number.NaN);
    const low = this.end(row, cases, nominal, body.ends.low, cases.low);
    const high = this.end(row, cases, nominal, body.ends.high, cases.high);
    cases.columns.forEach((column, i) => {
      const way = cases.stands[i] as CornerEnd;
      const end = way < 0 ? low : way > 0 ? high : nominal;
      values[i] = typeof end === 'number' ? end : Number.NaN;
      if (typeof end === 'object') this.note(cases, column, end);
    });
    return values;
  }

  private end(
    row: Row,
    cases: RowCases,
    nominal: number,
    offset: number | Expr,
    compiled: Compiled | undefined,
  ): number | GridError {
    if (!compiled) return nominal + (offset as number);
    const blocks = cases.ports.map(({ row: used }) => Float64Array.of(this.nominal(used)));
    blocks.push(Float64Array.of(Number.NaN));
    const value = nominal + (compiled.run(blocks, 1)[0] as number);
    if (!Number.isNaN(value)) return value;
    const seen = (ref: Reference) => this.seen(row, ref.name, NOMINAL);
    return errorOf(compiled.expr, row.slot, seen, this.functions) ?? { root: row.slot, message: '' };
  }

  private gather(port: Port, own: RowCases): void {
    const other = port.row.cases;
    const nominal = this.nominal(port.row);
    if (!other) {
      port.block.fill(nominal);
      return;
    }
    if (port.layout !== other.layout) {
      own.columns.forEach((column, i) => {
        port.at[i] = other.at.get(column) ?? -1;
      });
      port.layout = other.layout;
    }
    const { block, at } = port;
    for (let i = 0; i < block.length; i++) {
      const place = at[i] as number;
      block[i] = place < 0 ? nominal : (other.values[place] as number);
    }
  }

  /** Nominal of a row as a number: logicals as 1 and 0, errors as NaN. */
  private nominal(row: Row): number {
    const value = this.grid.value(row.slot, NOMINAL);
    return typeof value === 'number' ? value : typeof value === 'boolean' ? Number(value) : Number.NaN;
  }

  /** What a formula of a row sees behind a name in a case. */
  private seen(row: Row, key: string, column: number): GridValue | undefined {
    const used = row.uses.find((one) => one.key === key);
    if (!used) return undefined;
    return this.value(used, column) ?? this.grid.value(used.slot, NOMINAL);
  }
}
