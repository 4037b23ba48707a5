import { type BlockFunction, compileClosure } from '../../language/compile/closure.ts';
import type { Expr } from '../../language/syntax/syntax.ts';
import type { EngineFunction } from '../network/functions.ts';
import { type Grid, highColumn, lowColumn } from '../network/grid.ts';
import type { Row } from '../network/layout.ts';
import { keyOf } from '../rows/key.ts';
import { placed } from './distributions.ts';
import { GROUP } from './stream.ts';
import { beginTurn, unitDraws } from './unit-draws.ts';

/** Draws computed at a time: few enough for the blocks of a cone to stay near the processor. */
export const BLOCK = 2 * GROUP;

/** What is compiled once for as long as a formula and the rows it uses stay as they are. */
export type Compiled = WeakMap<readonly Row[], { expr: Expr; run: BlockFunction }>;

/** The rows upstream of those asked for, and no others, over blocks of draws: columns of numbers through closures. */
export class Cone {
  private readonly blocks = new Map<Row, Float64Array>();
  private readonly steps: ((group: number, n: number) => void)[] = [];

  constructor(
    rows: Iterable<Row>,
    private readonly grid: Grid,
    private readonly functions: ReadonlyMap<string, EngineFunction>,
    private readonly compiled: Compiled,
    private readonly seed: number,
  ) {
    beginTurn();
    const all = new Set<Row>(rows);
    for (const row of all) if (row.members.length > 0) for (const used of row.uses) all.add(used);
    for (const row of [...all].sort((a, b) => a.place - b.place)) this.lay(row);
  }

  /** Draws a block from a group on; `n` draws, groups of them whole. */
  draw(group: number, n: number): void {
    for (const step of this.steps) step(group, n);
  }

  /** What was drawn last of a row. */
  of(row: Row): Float64Array {
    return this.blocks.get(row) ?? NOTHING;
  }

  private lay(row: Row): void {
    const { body } = row.definition;
    const own = new Float64Array(BLOCK);
    this.blocks.set(row, own);
    if (row.members.length === 0) own.fill(this.nominal(row));
    else if (body.kind === 'source') this.laySource(row, own);
    else if (body.kind === 'formula') this.layFormula(row, body.expr);
    else own.fill(Number.NaN);
  }

  private laySource(row: Row, own: Float64Array): void {
    const { body } = row.definition;
    if (body.kind !== 'source' || row.source === undefined) return;
    const at = (column: number): number => {
      const value = this.grid.value(row.slot, column);
      return typeof value === 'number' ? value : Number.NaN;
    };
    const { distribution, k, dof } = body.ends;
    const [low, high] = [at(lowColumn(row.source)), at(highColumn(row.source))];
    // A source that does not move needs no stream.
    if (low === high) {
      own.fill(low);
      return;
    }
    const units = unitDraws(row.key, this.seed, { distribution, dof });
    const { from, times } = placed({ nominal: this.nominal(row), low, high, distribution, k, dof });
    this.steps.push((group, n) => {
      for (let at = 0; at < n; at += GROUP) {
        const unit = units(group + at / GROUP);
        for (let i = 0; i < GROUP; i++) own[at + i] = from + times * (unit[i] as number);
      }
    });
  }

  private layFormula(row: Row, expr: Expr): void {
    const known = this.compiled.get(row.uses);
    let run = known?.expr === expr ? known.run : undefined;
    if (!run) {
      const slots = new Map(row.uses.map((used, i) => [used.key, i]));
      run = compileClosure(expr, (ref) => slots.get(keyOf(ref)) ?? row.uses.length, this.functions);
      this.compiled.set(row.uses, { expr, run });
    }
    const work = run;
    const own = this.blocks.get(row) as Float64Array;
    const inputs: Float64Array[] = row.uses.map(() => NOTHING);
    inputs.push(NOTHING);
    this.steps.push((_, n) => {
      for (const [i, used] of row.uses.entries()) inputs[i] = this.of(used);
      // Another row of the same formula may share the closure, whose block is then its own again.
      own.set(work(inputs, n).subarray(0, n));
    });
  }

  private nominal(row: Row): number {
    const value = this.grid.nominal(row.slot);
    return typeof value === 'number' ? value : typeof value === 'boolean' ? Number(value) : Number.NaN;
  }
}

const NOTHING = new Float64Array(BLOCK).fill(Number.NaN);
