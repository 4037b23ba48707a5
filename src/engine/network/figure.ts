import type { Contribution, Figure } from '../rows/results.ts';
import { type SourceEnds, standardFromEnds } from '../rows/row.ts';
import { type Grid, type GridError, highColumn, lowColumn } from './grid.ts';
import type { Row } from './layout.ts';
import type { Network } from './network.ts';

/** Effect of one source alone on a row, SI; NaN where the row is an error with the source at that end. */
interface Effect {
  source: number;
  low: number;
  high: number;
}

const number = (value: unknown): number => (typeof value === 'number' ? value : Number.NaN);

/** Nominal of a row as it stands on the grid: a number, a logical, an error, or undefined before it is computed. */
const nominalOf = (grid: Grid, row: Row): number | boolean | GridError | undefined => grid.nominal(row.slot);

const endsOf = (network: Network, source: number): SourceEnds => {
  const body = network.sourceRow(source)?.definition.body;
  if (body?.kind !== 'source') throw new Error(`no source row for slot ${source}`);
  return body.ends;
};

/** Standard uncertainty that a source contributes by its effect on a row. */
const standardOf = (ends: SourceEnds, effect: Effect): number =>
  standardFromEnds(effect.low, effect.high, ends.distribution, ends.k);

/**
 * Statistical figure and worst case of a row. `worst` are its ends where it has more than one source, or goes both ways
 * with the one it has. Welch-Satterthwaite (JCGM 100 G.4) for the degrees of freedom.
 */
export function figureOf(
  network: Network,
  grid: Grid,
  row: Row,
  worst: Pick<Figure, 'low' | 'high' | 'atMost'> | undefined,
): Figure | undefined {
  const value = grid.nominal(row.slot);
  if (typeof value !== 'number') return undefined;
  const sources = network.sourcesInOrder(row);
  const n = sources.length;
  if (n === 0) return { value, low: value, high: value, centre: value, u: 0, dof: Number.POSITIVE_INFINITY };
  const places = row.ordered.at;
  const values = row.cases?.values ?? NO_VALUES;
  let centre = value;
  let variance = 0;
  let fourth = 0;
  for (let i = 0; i < n; i++) {
    const at = places[i] as number;
    const below = (values[at] as number) - value;
    const above = (values[at + 1] as number) - value;
    centre += (below + above) / 2;
    const ends = endsOf(network, sources[i] as number);
    const u = standardFromEnds(below, above, ends.distribution, ends.k);
    variance += u * u;
    const { dof } = ends;
    if (dof < Number.POSITIVE_INFINITY && u > 0) fourth += u ** 4 / dof;
  }
  const dof =
    fourth > 0 && Number.isFinite(variance ** 2) ? variance ** 2 / fourth : Number.POSITIVE_INFINITY;
  const u = variance < Number.POSITIVE_INFINITY ? Math.sqrt(variance) : rootOfSum(network, grid, row);
  const { low = Number.NaN, high = Number.NaN, atMost } = worst ?? {};
  return { value, low, high, centre, u, dof, ...(atMost ? { atMost } : {}) };
}

const NO_VALUES = new Float64Array(0);

/** Where squares are beyond computing, their root need not be. */
const rootOfSum = (network: Network, grid: Grid, row: Row): number =>
  Math.hypot(
    ...effectsOf(network, grid, row).map((effect) => standardOf(endsOf(network, effect.source), effect)),
  );

/** One-at-a-time effects of every source upstream. */
function effectsOf(network: Network, grid: Grid, row: Row): Effect[] {
  const nominal = number(nominalOf(grid, row));
  const values = row.cases?.values ?? NO_VALUES;
  return network.sourcesInOrder(row).map((source, i) => {
    const at = row.ordered.at[i] as number;
    return { source, low: number(values[at]) - nominal, high: number(values[at + 1]) - nominal };
  });
}

/** Grid column of the first case in which a row that has a value at nominal has none, and the source at an end there. */
export function brokenColumn(network: Network, row: Row): { source: number; column: number } | undefined {
  const values = row.cases?.values ?? NO_VALUES;
  const sources = network.sourcesInOrder(row);
  for (let i = 0; i < sources.length; i++) {
    const at = row.ordered.at[i] as number;
    const source = sources[i] as number;
    if (Number.isNaN(values[at] ?? Number.NaN)) return { source, column: lowColumn(source) };
    if (Number.isNaN(values[at + 1] ?? Number.NaN)) return { source, column: highColumn(source) };
  }
  return undefined;
}

/** What each source contributes to a row's spread, largest first. */
export function budgetOf(network: Network, grid: Grid, row: Row): Contribution[] {
  return effectsOf(network, grid, row)
    .map((effect) => {
      const source = network.sourceRow(effect.source) as Row;
      const ends = endsOf(network, effect.source);
      return {
        source: source.key,
        label: ends.label,
        cell: source.owner,
        low: effect.low,
        high: effect.high,
        u: standardOf(ends, effect),
        dof: ends.dof,
      };
    })
    .filter((one) => one.low !== 0 || one.high !== 0)
    .sort((a, b) => b.u - a.u || Math.abs(b.high - b.low) - Math.abs(a.high - a.low));
}
