import { isEmpty } from './bits.ts';
import { type Grid, NOMINAL } from './grid.ts';
import type { Row } from './layout.ts';

export type End = -1 | 0 | 1;

/** One source put at another end than it started from. */
export interface Turn {
  source: number;
  end: End;
}

/** A row on the way to the one asked about. */
interface Step {
  row: Row;
  /** Places on the way of the rows it uses; empty where its value is not worked out from them. */
  uses: readonly number[];
  /** Their blocks, and one without values for a name that is not there. */
  blocks: Float64Array[];
  /** Its value in each trial. */
  values: Float64Array;
}

/**
 * Evaluates one row with its sources at chosen ends by the closures of its cases: for the few trials that decide a
 * corner, where laying out corner columns would cost far more. All trials of one question are computed at once.
 */
export class Trial {
  private readonly ways = new Map<Row, readonly Step[]>();
  private nothing = new Float64Array(0);

  constructor(private readonly grid: Grid) {}

  /** Rows or references have changed. */
  forget(): void {
    this.ways.clear();
  }

  /** What a row hangs on, each after those it uses. */
  private wayTo(row: Row): readonly Step[] {
    const known = this.ways.get(row);
    if (known) return known;
    const all = new Set<Row>([row]);
    for (const one of all) if (isWorkedOut(one)) for (const used of one.uses) all.add(used);
    const rows = [...all].sort((a, b) => a.place - b.place);
    const places = new Map(rows.map((one, place) => [one, place]));
    const steps = rows.map((one): Step => {
      const uses = isWorkedOut(one) ? one.uses.map((used) => places.get(used) as number) : [];
      return { row: one, uses, blocks: [], values: new Float64Array(0) };
    });
    this.ways.set(row, steps);
    return steps;
  }

  /**
   * Values of `row` with every source where `start` has it, then with one turned at a time; NaN where it is an error.
   * They are good until the next trials. Goes up the chain without recursion: a chain may be thousands long.
   */
  values(row: Row, start: (source: number) => End, turns: readonly Turn[]): Float64Array {
    const n = 1 + turns.length;
    if (this.nothing.length < n) this.nothing = new Float64Array(2 * n).fill(Number.NaN);
    const steps = this.wayTo(row);
    for (const step of steps) this.take(step, steps, n, start, turns);
    return (steps.at(-1) as Step).values;
  }

  private take(
    step: Step,
    steps: readonly Step[],
    n: number,
    start: (source: number) => End,
    turns: readonly Turn[],
  ): void {
    const { row, uses, blocks } = step;
    const formula = row.cases?.formula;
    if (isWorkedOut(row) && formula) {
      for (let i = 0; i < uses.length; i++) blocks[i] = (steps[uses[i] as number] as Step).values;
      blocks[uses.length] = this.nothing;
      step.values = formula.run(blocks, n);
      return;
    }
    if (step.values.length < n) step.values = new Float64Array(n);
    const value = this.grid.value(row.slot, NOMINAL);
    const nominal = typeof value === 'object' ? Number.NaN : Number(value);
    const { source } = row;
    if (source === undefined || isEmpty(row.sources)) {
      step.values.fill(nominal);
      return;
    }
    // Of a source's columns the first two are its low and its high end.
    const at = (end: End): number =>
      end === 0 ? nominal : (row.cases?.values[end < 0 ? 0 : 1] ?? Number.NaN);
    step.values.fill(at(start(source)));
    for (let i = 0; i < turns.length; i++) {
      const turn = turns[i] as Turn;
      if (turn.source === source) step.values[i + 1] = at(turn.end);
    }
  }
}

/** True where sources reach a row through what it uses. */
const isWorkedOut = (row: Row): boolean => row.source === undefined && !isEmpty(row.sources);
