/**
 * The way from some inputs of a sheet to some of its figures, compiled once and computed for many trials at a time.
 *
 *     const path = new Path(engine.computed(), [{ row: interference }], [margin], [cornerOf(lowest)]);
 *     path.run([values], 64);       // one block of values for each input, SI, by number; `n` of each count
 *     path.nominal(margin);         // what the row comes to in each trial, SI; NaN where it has no value
 *     path.at(margin, 0);           // the same with the sources standing as case 0 has them
 *
 * - A free row is put at the trial's value whatever stands in its entry; its tolerance stays about it. `moves: 'spread'`
 *   turns instead how far a source reaches: 1 as it stands, 0.5 half as far.
 * - Everything downstream follows as the grid has it (`network/cases.ts`): held rows and the nominal of a source follow
 *   the nominals, everything else its case. What the free rows do not move is computed once.
 * - Of an input of a library cell take {@link freeRow}; an input that only names another cell has no row of its own.
 * - Blocks given out are the path's own and are overwritten by its next run. A path holds for one state of the sheet.
 */
import { type BlockFunction, compileClosure } from '../../language/compile/closure.ts';
import type { Expr } from '../../language/syntax/syntax.ts';
import type { Computed } from '../computed.ts';
import type { EngineFunction } from '../network/functions.ts';
import type { CornerEnd, Row } from '../network/layout.ts';
import { keyOf, partRow, type RowKey } from '../rows/key.ts';

/** The part of a computed sheet that a path is compiled from. */
export type PathBook = Pick<Computed, 'network' | 'grid' | 'functions'>;

/** What a trial moves: a row, or how far a source reaches, as a factor. */
export interface Free {
  row: Row;
  moves?: 'spread';
}

/** At which end a source stands in a case: -1 low, 1 high, 0 nominal. */
export type Stand = (source: Row) => CornerEnd;

/** Every source at the end that pushes the row down, or up: by `lowest` of its worst case, for its members in turn. */
export const cornerOf = (
  book: PathBook,
  row: Row,
  lowest: readonly (-1 | 1)[],
  side: 'low' | 'high',
): Stand => {
  const ends = new Map<Row | undefined, CornerEnd>();
  row.members.forEach((source, i) => {
    const end = lowest[i] as -1 | 1;
    ends.set(book.network.sourceRow(source), side === 'low' ? end : end < 0 ? 1 : -1);
  });
  return (source) => ends.get(source) ?? 0;
};

/** One source alone at an end. */
export const alone =
  (source: Row, end: -1 | 1): Stand =>
  (other) =>
    other === source ? end : 0;

/** The row that a trial moves for an entry: of a formula with a tolerance beside it the formula, so that the tolerance stays. */
export const freeRow = (book: PathBook, key: RowKey): Row | undefined =>
  book.network.rows.get(partRow(key, 'formula')) ?? book.network.rows.get(key);

/** A row on the way: its blocks, and what computes them. */
interface Lane {
  row: Row;
  nominal: Float64Array;
  cases: Float64Array[];
}

type Step = (values: readonly Float64Array[], n: number) => void;

export class Path {
  private readonly lanes = new Map<Row, Lane>();
  private readonly moving = new Set<Row>();
  private readonly steps: Step[] = [];
  private size: number;
  private readonly nothing: Lane;

  constructor(
    private readonly book: PathBook,
    private readonly free: readonly Free[],
    asked: readonly Row[],
    private readonly cases: readonly Stand[] = [],
    /** Trials in a block, at most. */
    readonly width = 64,
  ) {
    this.size = width;
    for (const { row } of free) this.moving.add(row);
    for (const row of this.moving) for (const user of row.usedBy) this.moving.add(user);
    const all = new Set<Row>(asked);
    const given = new Set(free.flatMap((one) => (one.moves === undefined ? [one.row] : [])));
    for (const row of all) {
      // The ends of a free source may depend on others though its nominal does not.
      const isOpen = this.moving.has(row) || (cases.length > 0 && row.members.length > 0);
      if (isOpen && !(given.has(row) && row.source === undefined)) for (const used of row.uses) all.add(used);
    }
    const none = new Float64Array(width).fill(Number.NaN);
    this.nothing = { row: undefined as never, nominal: none, cases: cases.map(() => none) };
    for (const row of [...all].sort((a, b) => a.place - b.place)) this.lay(row);
  }

  /** True where one of the free rows may move the row at all, by what its formulas name. */
  reaches(row: Row): boolean {
    return this.moving.has(row);
  }

  run(values: readonly Float64Array[], n: number): void {
    if (n > this.size) throw new RangeError(`A path of ${this.size} was given ${n} trials.`);
    for (const step of this.steps) step(values, n);
  }

  nominal(row: Row): Float64Array {
    return (this.lanes.get(row) ?? this.nothing).nominal;
  }

  at(row: Row, which: number): Float64Array {
    return (this.lanes.get(row) ?? this.nothing).cases[which] as Float64Array;
  }

  private lay(row: Row): void {
    const { body } = row.definition;
    const nominal = new Float64Array(this.width);
    const lane: Lane = { row, nominal, cases: this.cases.map(() => nominal) };
    this.lanes.set(row, lane);
    const value = this.free.findIndex((one) => one.row === row && one.moves === undefined);
    if (value >= 0)
      this.steps.push((values, n) => nominal.set((values[value] as Float64Array).subarray(0, n)));
    else if (this.moving.has(row) && !row.ring && body.kind === 'formula')
      this.steps.push(this.follow(row, body.expr, (used) => this.lane(used).nominal, nominal));
    else if (this.moving.has(row) && !row.ring && body.kind === 'source' && typeof body.nominal !== 'number')
      this.steps.push(this.follow(row, body.nominal, (used) => this.lane(used).nominal, nominal));
    else nominal.fill(nominalOf(this.book, row));
    if (row.ring || row.members.length === 0 || (value >= 0 && body.kind !== 'source')) return;
    if (body.kind === 'source') this.laySource(lane);
    else if (body.kind === 'formula' && !body.held) this.layCases(lane, body.expr);
  }

  private lane(row: Row): Lane {
    return this.lanes.get(row) ?? this.nothing;
  }

  private layCases(lane: Lane, expr: Expr): void {
    const { row } = lane;
    this.cases.forEach((_, c) => {
      if (row.uses.every((used) => this.lane(used).cases[c] === this.lane(used).nominal)) return;
      const own = new Float64Array(this.width);
      lane.cases[c] = own;
      this.takeUp(
        row,
        this.follow(row, expr, (used) => this.lane(used).cases[c] as Float64Array, own),
      );
    });
  }

  private laySource(lane: Lane): void {
    const { row, nominal } = lane;
    const { body } = row.definition;
    if (body.kind !== 'source') return;
    const factor = this.free.findIndex((one) => one.row === row && one.moves === 'spread');
    const offsets = new Map<CornerEnd, Float64Array>();
    this.cases.forEach((stand, c) => {
      const end = stand(row);
      if (end === 0) return;
      let offset = offsets.get(end);
      if (!offset) {
        const reach = end < 0 ? body.ends.low : body.ends.high;
        offset = new Float64Array(this.width);
        offsets.set(end, offset);
        if (typeof reach === 'number') offset.fill(reach);
        else
          this.takeUp(
            row,
            this.follow(row, reach, (used) => this.lane(used).nominal, offset),
          );
      }
      const own = new Float64Array(this.width);
      lane.cases[c] = own;
      const by = offset;
      this.takeUp(row, (values, n) => {
        const factors = values[factor];
        for (let i = 0; i < n; i++)
          own[i] = (nominal[i] as number) + (by[i] as number) * (factors ? (factors[i] as number) : 1);
      });
    });
  }

  /** A step of what moves is taken with every run; of what does not, once, over the whole width. */
  private takeUp(row: Row, step: Step): void {
    if (this.moving.has(row)) this.steps.push(step);
    else step([], this.width);
  }

  private follow(row: Row, expr: Expr, blockOf: (used: Row) => Float64Array, own: Float64Array): Step {
    const run = compiled(row, expr, this.book.functions);
    const inputs = row.uses.map(blockOf);
    inputs.push(this.nothing.nominal);
    // Another row of the same formula may share the closure, whose block is then its own again.
    return (_, n) => own.set(run(inputs, n).subarray(0, n));
  }
}

/** Closures of formulas, for as long as a row stays laid out as it is. */
const closures = new WeakMap<Expr, { uses: readonly Row[]; run: BlockFunction }>();

function compiled(row: Row, expr: Expr, functions: ReadonlyMap<string, EngineFunction>): BlockFunction {
  const known = closures.get(expr);
  if (known?.uses === row.uses) return known.run;
  const slots = new Map(row.uses.map((used, i) => [used.key, i]));
  const run = compileClosure(expr, (ref) => slots.get(keyOf(ref)) ?? row.uses.length, functions);
  closures.set(expr, { uses: row.uses, run });
  return run;
}

/** Nominal of a row as it stands: logicals as 1 and 0, what has no value as NaN. */
export const nominalOf = ({ grid }: PathBook, row: Row): number => {
  const value = grid.nominal(row.slot);
  return typeof value === 'number' ? value : typeof value === 'boolean' ? Number(value) : Number.NaN;
};
