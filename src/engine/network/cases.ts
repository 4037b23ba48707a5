import { type BlockFunction, compileClosure } from '../../language/compile/closure.ts';
import type { Expr, Reference } from '../../language/syntax/syntax.ts';
import { keyOf, type RowKey } from '../rows/key.ts';
import { errorOf } from './case-errors.ts';
import type { EngineFunction } from './functions.ts';
import { type Grid, type GridError, type GridValue, NOMINAL } from './grid.ts';
import type { Compiled, CornerEnd, Port, Row, RowCases } from './layout.ts';

/** What changed of a row, where it is not one column. */
const NOTHING = -1;
const MUCH = -2;

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
  /** The first place of those. */
  private from = 0;
  private layouts = 0;
  /** What one row reads while it is computed, and the block for a name that is not there, which comes after. */
  private read: Float64Array[] = [];
  private nothing = new Float64Array(0);
  private readonly blocks: Float64Array[] = [];

  constructor(
    private readonly grid: Grid,
    private readonly functions: ReadonlyMap<string, EngineFunction>,
  ) {}

  /** Lays out a row that follows others, for the given columns. */
  lay(row: Row, expr: Expr, columns: readonly number[]): void {
    const cases = this.fresh(row, columns, []);
    cases.formula = this.compiled(expr, row);
    row.cases = cases;
    this.stale.add(row);
  }

  /** Lays out a source; `stands` is the end it is at in each of its columns. */
  laySource(row: Row, columns: readonly number[], stands: readonly CornerEnd[]): void {
    const body = row.definition.body;
    if (body.kind !== 'source') return;
    const cases = this.fresh(row, columns, stands);
    if (typeof body.ends.low !== 'number') cases.low = this.compiled(body.ends.low, row);
    if (typeof body.ends.high !== 'number') cases.high = this.compiled(body.ends.high, row);
    row.cases = cases;
    this.stale.add(row);
  }

  /** The same formula in other columns; `closed` when every row that reads a new one has it anew as well. */
  relay(row: Row, columns: readonly number[], stands: readonly CornerEnd[], closed: boolean): void {
    const old = row.cases;
    if (!old) return;
    const cases = this.fresh(row, columns, stands);
    cases.formula = old.formula;
    cases.low = old.low;
    cases.high = old.high;
    const known = new Uint8Array(columns.length);
    for (let i = 0; i < columns.length; i++) {
      const place = old.at.get(columns[i] as number);
      if (place === undefined || old.known?.[place] === 0) continue;
      cases.values[i] = old.values[place] as number;
      known[i] = 1;
    }
    if (closed) cases.known = known;
    row.cases = cases;
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

  private fresh(row: Row, columns: readonly number[], stands: readonly CornerEnd[]): RowCases {
    const n = columns.length;
    const ports: Port[] = [];
    for (const used of row.uses) ports.push({ row: used, layout: -1 });
    this.makeRoom(ports.length, n);
    const at = new Map<number, number>();
    for (let i = 0; i < n; i++) at.set(columns[i] as number, i);
    return {
      columns,
      at,
      values: new Float64Array(n).fill(Number.NaN),
      known: undefined,
      errors: undefined,
      layout: ++this.layouts,
      ports,
      places: new Int32Array(n * ports.length),
      formula: undefined,
      low: undefined,
      high: undefined,
      stands,
    };
  }

  /** Blocks as long as the longest row asks for: one for each of its ports, and one without a value. */
  private makeRoom(ports: number, cases: number): void {
    while (this.read.length < ports) this.read.push(new Float64Array(this.nothing.length));
    if (cases <= this.nothing.length) return;
    this.nothing = new Float64Array(2 * cases).fill(Number.NaN);
    this.read = this.read.map(() => new Float64Array(2 * cases));
  }

  private compiled(expr: Expr, row: Row): Compiled {
    const slots = new Map(row.uses.map((used, i) => [used.key, i]));
    return { expr, run: compileClosure(expr, (ref) => slots.get(keyOf(ref)) ?? slots.size, this.functions) };
  }

  /** Value of a row in a case; undefined where it has none there and equals its nominal. */
  value(row: Row, column: number): GridValue | undefined {
    const cases = row.cases;
    const at = cases?.at.get(column);
    if (!cases || at === undefined) return undefined;
    const error = cases.errors?.get(column);
    if (error) return error;
    const value = cases.values[at] as number;
    const nominal = this.grid.nominal(row.slot);
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
    this.from = order.length;
    for (const row of this.stale) this.mark(row);
    this.stale.clear();
    for (const slot of touched) {
      const row = rowAt(slot);
      if (!row) continue;
      this.mark(row);
      for (const user of row.usedBy) this.mark(user);
    }
    const { dirty } = this;
    for (let place = this.from; place < order.length; place++) {
      if (dirty[place] === 0) continue;
      dirty[place] = 0;
      const row = order[place] as Row;
      if (!row.cases) continue;
      const changed = this.compute(row, row.cases);
      if (changed === NOTHING) continue;
      touched.add(row.slot);
      for (const user of row.usedBy) if (changed === MUCH || user.cases?.at.has(changed)) this.mark(user);
    }
  }

  private mark(row: Row): void {
    if (!row.cases) return;
    this.dirty[row.place] = 1;
    if (row.place < this.from) this.from = row.place;
  }

  /** Computes every case of a row; gives the column that changed where it is only one. */
  private compute(row: Row, cases: RowCases): number {
    const wrong = cases.errors !== undefined;
    cases.errors = undefined;
    const found = cases.formula ? this.follow(cases, cases.formula.run) : this.ends(row, cases);
    const { values, known } = cases;
    const n = values.length;
    let changed = wrong ? MUCH : NOTHING;
    let without = false;
    for (let i = 0; i < n; i++) {
      const value = found[i] as number;
      const before = values[i] as number;
      if (value === before && value !== 0) continue;
      if (Number.isNaN(value)) without = true;
      if (Object.is(value, before)) continue;
      values[i] = value;
      // A column that is new needs no telling: whoever reads it is computed anyhow.
      if (known === undefined || known[i] === 1)
        changed = changed === NOTHING ? (cases.columns[i] as number) : MUCH;
    }
    cases.known = undefined;
    if (without && cases.formula) this.explain(row, cases, cases.formula.expr);
    return cases.errors === undefined ? changed : MUCH;
  }

  private follow(cases: RowCases, run: BlockFunction): Float64Array {
    const { ports } = cases;
    const { blocks, read } = this;
    const n = ports.length;
    for (let i = 0; i < n; i++) {
      const block = read[i] as Float64Array;
      this.gather(ports[i] as Port, i, cases, block);
      blocks[i] = block;
    }
    blocks[n] = this.nothing;
    return run(blocks, cases.columns.length);
  }

  /** Says of each case without a value why it has none. */
  private explain(row: Row, cases: RowCases, expr: Expr): void {
    cases.columns.forEach((column, i) => {
      if (!Number.isNaN(cases.values[i])) return;
      const error = errorOf(expr, row.slot, (ref) => this.seen(row, keyOf(ref), column), this.functions);
      if (error) this.note(cases, column, error);
    });
  }

  private note(cases: RowCases, column: number, error: GridError): void {
    cases.errors ??= new Map();
    cases.errors.set(column, error);
  }

  /** Nominal and both ends of a source, in the order its columns ask for. */
  private ends(row: Row, cases: RowCases): Float64Array {
    const body = row.definition.body;
    const nominal = this.grid.nominal(row.slot);
    const values = new Float64Array(cases.columns.length);
    if (body.kind !== 'source' || typeof nominal !== 'number') return values.fill(Number.NaN);
    const low = this.end(row, cases, nominal, body.ends.low, cases.low);
    const high = this.end(row, cases, nominal, body.ends.high, cases.high);
    for (let i = 0; i < values.length; i++) {
      const way = cases.stands[i] as CornerEnd;
      const end = way < 0 ? low : way > 0 ? high : nominal;
      values[i] = typeof end === 'number' ? end : Number.NaN;
      if (typeof end === 'object') this.note(cases, cases.columns[i] as number, end);
    }
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
    const seen = (ref: Reference) => this.seen(row, keyOf(ref), NOMINAL);
    return errorOf(compiled.expr, row.slot, seen, this.functions) ?? { root: row.slot, message: '' };
  }

  /** Fills a block with what each case of a row reads of the row behind a port. */
  private gather(port: Port, which: number, own: RowCases, block: Float64Array): void {
    const n = own.columns.length;
    const other = port.row.cases;
    const nominal = this.nominal(port.row);
    if (!other) {
      for (let i = 0; i < n; i++) block[i] = nominal;
      return;
    }
    const { values } = other;
    const { places } = own;
    const start = which * n;
    if (port.layout !== other.layout) {
      const { columns } = own;
      for (let i = 0; i < n; i++) places[start + i] = other.at.get(columns[i] as number) ?? -1;
      port.layout = other.layout;
    }
    for (let i = 0; i < n; i++) {
      const place = places[start + i] as number;
      block[i] = place < 0 ? nominal : (values[place] as number);
    }
  }

  /** Nominal of a row as a number: logicals as 1 and 0, errors as NaN. */
  private nominal(row: Row): number {
    const value = this.grid.nominal(row.slot);
    return typeof value === 'number' ? value : typeof value === 'boolean' ? Number(value) : Number.NaN;
  }

  /** What a formula of a row sees behind a name in a case. */
  private seen(row: Row, key: RowKey, column: number): GridValue | undefined {
    const used = row.uses.find((one) => one.key === key);
    if (!used) return undefined;
    return this.value(used, column) ?? this.grid.nominal(used.slot);
  }
}
