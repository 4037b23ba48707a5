import { coverageFactor, expandedFactor } from '../../../shared/statistics/coverage.ts';
import type { Computed } from '../computed.ts';
import type { Row } from '../network/layout.ts';
import type { OutputPlan } from '../rows/assembled.ts';
import type { RowKey } from '../rows/key.ts';
import { standardFromEnds } from '../rows/row.ts';
import { alone, cornerOf, nominalOf, type Path, type Stand } from '../trial/path.ts';
import type { Want } from './question.ts';

/** How far a figure is from where it is wanted, over a path. */
export interface Wanted {
  /** The row of the figure itself. */
  figure: Row;
  /** Rows and cases that a path must have for it. */
  rows: readonly Row[];
  cases: readonly Stand[];
  /** Takes the distances of `n` trials off a path; of a limit positive where it is kept. */
  distance(path: Path, n: number, into: Float64Array): void;
  /** A size that counts as much, SI: what is a trillionth of it is arithmetic. */
  scale: number;
  /** Only on one side of nothing is it as wanted. */
  isLimit: boolean;
}

const two = 'has no two limits to lie in the middle of.';

/** What is wanted of an output, as distances; or why it cannot be. */
export function wantedOf(book: Computed, plan: OutputPlan, want: Want): Wanted | string {
  const row = (key: RowKey | undefined): Row | undefined =>
    key === undefined ? undefined : book.network.rows.get(key);
  const figure = row(plan.planned);
  if (!figure) return 'has no value.';
  if (plan.measured !== undefined)
    return 'has been measured, and is what it came out at: nothing that is changed now moves it.';
  if (plan.stands === 'issued') return 'is released to cut and stays there: withdraw it first.';
  const here = Math.abs(nominalOf(book, figure)) || 0;
  if (want.at === 'value')
    return {
      figure,
      rows: [figure],
      cases: [],
      scale: Math.max(Math.abs(want.value), 1e-3 * here),
      isLimit: false,
      distance: (path, n, into) => {
        const values = path.nominal(figure);
        for (let i = 0; i < n; i++) into[i] = (values[i] as number) - want.value;
      },
    };
  const { limits } = plan;
  if (want.at === 'middle') {
    const [above, below] = [row(limits?.lowerMargin), row(limits?.upperMargin)];
    if (!above || !below) return two;
    return {
      figure,
      rows: [figure, above, below],
      cases: [],
      scale: Math.max(Math.abs(nominalOf(book, above) + nominalOf(book, below)) || 0, 1e-6 * here),
      isLimit: false,
      distance: (path, n, into) => {
        const [low, high] = [path.nominal(above), path.nominal(below)];
        for (let i = 0; i < n; i++) into[i] = ((low[i] as number) - (high[i] as number)) / 2;
      },
    };
  }
  const wear = (): Row | undefined => row(book.wearMargin(plan));
  const margin =
    want.at === 'lower' ? row(limits?.lowerMargin) : want.at === 'upper' ? row(limits?.upperMargin) : wear();
  if (!margin) return `has no ${want.at} limit.`;
  const rule = limits?.rule ?? book.settings.rule;
  const scale = Math.max(here, Math.abs(nominalOf(book, margin)) || 0);
  const common = { figure, rows: [figure, margin], scale, isLimit: true };
  if (rule === 'worst-case') {
    const corner = cornersOf(book, margin);
    return {
      ...common,
      cases: corner,
      distance: (path, n, into) => {
        into.set(path.nominal(margin).subarray(0, n));
        corner.forEach((_, c) => {
          const values = path.at(margin, c);
          for (let i = 0; i < n; i++)
            if (!((values[i] as number) >= (into[i] as number))) into[i] = values[i] as number;
        });
      },
    };
  }
  const sources = margin.members
    .map((source) => book.network.sourceRow(source))
    .filter((source) => source !== undefined);
  const cases = sources.flatMap((source) => [alone(source, -1), alone(source, 1)]);
  return {
    ...common,
    cases,
    distance: (path, n, into) => {
      for (let i = 0; i < n; i++) into[i] = byRule(path, margin, sources, rule, i);
    },
  };
}

/**
 * The corners of a margin that are its worst case; both ends of its only source. Where no corner is known to be, the one
 * to which its sources push it one by one: near enough to begin with, and the verdict settles the rest.
 */
function cornersOf(book: Computed, margin: Row): Stand[] {
  const [only] = margin.members;
  if (only === undefined) return [];
  if (margin.members.length === 1) {
    const source = book.network.sourceRow(only) as Row;
    return [alone(source, -1), alone(source, 1)];
  }
  const lowest = margin.bound?.worst?.lowest;
  if (lowest) return [cornerOf(book, margin, lowest, 'low')];
  const values = margin.cases?.values;
  const pushed = margin.members.map((_, i) =>
    (values?.[2 * i + 1] as number) < (values?.[2 * i] as number) ? 1 : -1,
  );
  return [cornerOf(book, margin, pushed, 'low')];
}

/** What is left of a margin by the effects of its sources one at a time, as the statistical rules take them. */
function byRule(path: Path, margin: Row, sources: readonly Row[], rule: string, trial: number): number {
  const value = path.nominal(margin)[trial] as number;
  let [centre, variance, fourth] = [value, 0, 0];
  sources.forEach(({ definition: { body } }, s) => {
    if (body.kind !== 'source') return;
    const low = (path.at(margin, 2 * s)[trial] as number) - value;
    const high = (path.at(margin, 2 * s + 1)[trial] as number) - value;
    const { distribution, k, dof } = body.ends;
    const u = standardFromEnds(low, high, distribution, k);
    centre += (low + high) / 2;
    variance += u * u;
    if (dof < Number.POSITIVE_INFINITY) fourth += u ** 4 / dof;
  });
  const dof = fourth > 0 ? variance ** 2 / fourth : Number.POSITIVE_INFINITY;
  const u = Math.sqrt(variance);
  switch (rule) {
    case 'simple':
      return centre;
    case 'iso14253-2017':
      return centre - coverageFactor(dof, 0.9) * u;
    default:
      return centre - expandedFactor(dof) * u;
  }
}
