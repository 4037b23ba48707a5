import { hasBit, isEmpty } from '../network/bits.ts';
import type { Grid } from '../network/grid.ts';
import type { Row } from '../network/layout.ts';

export type End = -1 | 0 | 1;

const NO_VALUES = new Float64Array(0);
const atNominal = (): End => 0;

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
  /** Its value in each trial: a block of its own, or that of its closure. */
  values: Float64Array;
  own: Float64Array;
}

/** What a row depends on, each after those it uses. */
interface Way {
  steps: readonly Step[];
  /** Of the last question at a corner: the sources turned, the steps they reach, and what those use besides. */
  turned: readonly number[];
  reached: readonly Step[];
  beside: readonly Step[];
}

/**
 * Evaluates one row with its sources at chosen ends by the closures of its cases: for the few trials that decide a
 * corner, where laying out corner columns would cost far more. All trials of one question are computed at once.
 */
export class Trial {
  private readonly ways = new Map<Row, Way>();
  private nothing = NO_VALUES;

  constructor(private readonly grid: Grid) {}

  /** Rows or references have changed. */
  forget(): void {
    this.ways.clear();
  }

  private wayTo(row: Row): Way {
    const known = this.ways.get(row);
    if (known) return known;
    const all = new Set<Row>([row]);
    for (const one of all) if (isWorkedOut(one)) for (const used of one.uses) all.add(used);
    const rows = [...all].sort((a, b) => a.place - b.place);
    const places = new Map(rows.map((one, place) => [one, place]));
    const steps = rows.map((one): Step => {
      const uses = isWorkedOut(one) ? one.uses.map((used) => places.get(used) as number) : [];
      return { row: one, uses, blocks: [], values: NO_VALUES, own: NO_VALUES };
    });
    const way: Way = { steps, turned: [], reached: [], beside: [] };
    this.ways.set(row, way);
    return way;
  }

  /**
   * Values of `row` with every source where a corner column of its cases has it, then with one turned at a time: the
   * same as {@link values}, but only what depends on the sources turned is worked out anew.
   */
  at(row: Row, column: number, turns: readonly Turn[]): Float64Array {
    const n = this.room(turns);
    const way = this.wayTo(row);
    if (!isOf(way.turned, turns)) reach(way, turns);
    for (const step of way.beside) this.stand(step, column, n);
    for (const step of way.reached) {
      if (isWorkedOut(step.row)) this.take(step, way.steps, n, atNominal, turns);
      else {
        this.stand(step, column, n);
        this.turn(step, turns);
      }
    }
    return (way.steps.at(-1) as Step).values;
  }

  /** A row that the turns do not reach, or a source before it is turned: its case in the column, else its nominal. */
  private stand(step: Step, column: number, n: number): void {
    const { cases } = step.row;
    const at = cases?.at.get(column);
    const value = cases && at !== undefined ? (cases.values[at] as number) : this.nominal(step.row);
    this.fill(step, n, value);
  }

  private fill(step: Step, n: number, value: number): void {
    if (step.own.length < n) step.own = new Float64Array(n);
    step.own.fill(value);
    step.values = step.own;
  }

  /** Numbers in one answer. */
  private room(turns: readonly Turn[]): number {
    const n = 1 + turns.length;
    if (this.nothing.length < n) this.nothing = new Float64Array(2 * n).fill(Number.NaN);
    return n;
  }

  /** Nominal of a row as a number: logicals as 1 and 0, errors as NaN. */
  private nominal(row: Row): number {
    const value = this.grid.nominal(row.slot);
    return typeof value === 'object' ? Number.NaN : Number(value);
  }

  /**
   * Values of `row` with every source where `start` has it, then with one turned at a time; NaN where it is an error.
   * They are good until the next trials. Goes up the chain without recursion: a chain may be thousands long.
   */
  values(row: Row, start: (source: number) => End, turns: readonly Turn[]): Float64Array {
    const n = this.room(turns);
    const { steps } = this.wayTo(row);
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
    const { source } = row;
    if (source === undefined || isEmpty(row.sources)) {
      this.fill(step, n, this.nominal(row));
      return;
    }
    this.fill(step, n, this.end(row, start(source)));
    this.turn(step, turns);
  }

  private turn(step: Step, turns: readonly Turn[]): void {
    for (let i = 0; i < turns.length; i++) {
      const turn = turns[i] as Turn;
      if (turn.source === step.row.source) step.values[i + 1] = this.end(step.row, turn.end);
    }
  }

  /** Value of a source at an end: of its columns the first two are its low and its high one. */
  private end(row: Row, end: End): number {
    return end === 0 ? this.nominal(row) : (row.cases?.values[end < 0 ? 0 : 1] ?? Number.NaN);
  }
}

/** True where the sources turned are those already reached from. */
function isOf(sources: readonly number[], turns: readonly Turn[]): boolean {
  let at = 0;
  for (let i = 0; i < turns.length; i++) {
    const { source } = turns[i] as Turn;
    if (source === sources[at]) continue;
    if (at + 1 >= sources.length || source !== sources[++at]) return false;
  }
  return at === sources.length - 1 && turns[0]?.source === sources[0];
}

/** Finds what of a way the sources turned reach. */
function reach(way: Way, turns: readonly Turn[]): void {
  const turned = [...new Set(turns.map(({ source }) => source))];
  const reached = way.steps.filter(({ row }) => turned.some((source) => hasBit(row.sources, source)));
  const among = new Set(reached);
  const beside = new Set<Step>();
  for (const { uses } of reached)
    for (const place of uses) {
      const used = way.steps[place] as Step;
      if (!among.has(used)) beside.add(used);
    }
  way.turned = turned;
  way.reached = reached;
  way.beside = [...beside];
}

/** True where sources reach a row through what it uses. */
const isWorkedOut = (row: Row): boolean => row.source === undefined && !isEmpty(row.sources);
