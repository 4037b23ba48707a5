import { keepsLimit, type Margin } from '../../../shared/checks/check.ts';
import type { Place } from '../../../shared/checks/states.ts';
import type { Computed } from '../computed.ts';
import type { CornerEnd, Row } from '../network/layout.ts';
import { type SourceEnds, standardFromEnds } from '../rows/row.ts';
import type { CheckBelow } from '../trial/checks.ts';
import { alone, Path, type Stand } from '../trial/path.ts';

/** Trials computed at a time. */
export const WIDTH = 64;

/** One thing that a check asks for: a limit kept, or what must hold for a cell; and where it is read in the cases of the path. */
interface Condition {
  check: CheckBelow;
  at?: Place;
  row: Row;
  /** Case with every source where it pushes the margin down. */
  corner: number;
  /** Cases with each source alone at its low end, its high end the next; and how the source is taken. */
  ends: { low: number; ends: SourceEnds }[];
}

/**
 * Whether checks hold where some inputs stand elsewhere, for many trials at once: nominals by the sheet's own formulas, and
 * the spread about each by corners, with the sources at the ends that are the worst as the sheet stands; by the rules of
 * the verdicts. Where sources turn round on the way, or draws decide, it is a guess, to be settled by the sheet itself.
 */
export class Sweep {
  private readonly path: Path;
  private readonly conditions: Condition[] = [];
  /** The conditions of each check, by number. */
  readonly ofCheck: readonly (readonly number[])[];

  constructor(
    private readonly computed: Computed,
    free: readonly Row[],
    checks: readonly CheckBelow[],
  ) {
    const cases: Stand[] = [];
    const corners: Map<Row, CornerEnd>[] = [];
    const cornerCases: number[] = [];
    const lone = new Map<Row, number>();
    const cornerOf = (row: Row): number => {
      const ends = this.lowestEnds(row);
      const at = corners.findIndex((one) =>
        [...ends].every(([source, end]) => (one.get(source) ?? end) === end),
      );
      const known = corners[at];
      if (known) {
        for (const [source, end] of ends) known.set(source, end);
        return cornerCases[at] as number;
      }
      corners.push(ends);
      cornerCases.push(cases.length);
      cases.push((source) => ends.get(source) ?? 0);
      return cases.length - 1;
    };
    const loneOf = (source: Row): number => {
      let at = lone.get(source);
      if (at === undefined) {
        at = cases.length;
        lone.set(source, at);
        cases.push(alone(source, -1), alone(source, 1));
      }
      return at;
    };
    const asked = new Set<Row>();
    this.ofCheck = checks.map((check) => {
      const { margins, rule, row, valid } = check;
      const first = this.conditions.length;
      if (row) asked.add(row);
      if (valid) this.conditions.push({ check, row: valid, corner: -1, ends: [] });
      const isWorst = rule === 'worst-case';
      for (const [at, margin] of Object.entries(margins) as [Place, Row][])
        this.conditions.push({
          check,
          at,
          row: margin,
          corner: isWorst ? cornerOf(margin) : -1,
          ends: isWorst ? [] : this.endsOf(margin, loneOf),
        });
      return this.conditions.slice(first).map((_, i) => first + i);
    });
    for (const one of this.conditions) asked.add(one.row);
    this.path = new Path(
      computed,
      free.map((row) => ({ row })),
      [...asked],
      cases,
      WIDTH,
    );
  }

  private endsOf(row: Row, loneOf: (source: Row) => number): Condition['ends'] {
    return row.members.flatMap((number) => {
      const source = this.computed.network.sourceRow(number);
      const body = source?.definition.body;
      return source && body?.kind === 'source' ? [{ low: loneOf(source), ends: body.ends }] : [];
    });
  }

  /** The end of each source at which a row is lowest: as its worst case has it, or as each alone moves it. */
  private lowestEnds(row: Row): Map<Row, CornerEnd> {
    const lowest = row.bound?.worst?.lowest;
    const values = row.cases?.values;
    const ends = new Map<Row, CornerEnd>();
    row.members.forEach((source, m) => {
      const own = this.computed.network.sourceRow(source);
      const falls = (values?.[2 * m] ?? 0) <= (values?.[2 * m + 1] ?? 0) ? -1 : 1;
      if (own) ends.set(own, lowest?.[m] ?? falls);
    });
    return ends;
  }

  /** Whether each condition holds in each of the trials; one list of values for each input, SI. At most {@link WIDTH}. */
  run(values: readonly Float64Array[], n: number): Uint8Array[] {
    this.path.run(values, n);
    return this.conditions.map((condition) => {
      const holds = new Uint8Array(n);
      for (let i = 0; i < n; i++) holds[i] = this.holds(condition, i) ? 1 : 0;
      return holds;
    });
  }

  private holds(condition: Condition, i: number): boolean {
    const { check, at, row } = condition;
    // NaN where it has no value, 0 where it does not hold.
    if (at === undefined) return (this.path.nominal(row)[i] as number) > 0;
    const margin = this.margin(condition, i);
    if (!margin || (at === 'wear' && !check.wearSide)) return false;
    const scale = check.row ? Math.abs(this.path.nominal(check.row)[i] as number) : Number.NaN;
    return keepsLimit(margin, check.rule, Number.isFinite(scale) ? scale : 0);
  }

  private margin({ row, corner, ends }: Condition, i: number): Margin | undefined {
    const value = this.path.nominal(row)[i] as number;
    if (Number.isNaN(value)) return undefined;
    if (corner >= 0) {
      const low = this.path.at(row, corner)[i] as number;
      // The other side of the worst case decides nothing here.
      return { value, low, high: Number.POSITIVE_INFINITY, centre: value, u: 0 };
    }
    let centre = value;
    let variance = 0;
    let fourth = 0;
    for (const { low, ends: source } of ends) {
      const below = (this.path.at(row, low)[i] as number) - value;
      const above = (this.path.at(row, low + 1)[i] as number) - value;
      centre += (below + above) / 2;
      const u = standardFromEnds(below, above, source.distribution, source.k);
      variance += u * u;
      if (source.dof < Number.POSITIVE_INFINITY && u > 0) fourth += u ** 4 / source.dof;
    }
    const u = Math.sqrt(variance);
    return {
      value,
      low: value,
      high: value,
      centre,
      u,
      ...(fourth > 0 ? { dof: variance ** 2 / fourth } : {}),
    };
  }
}
