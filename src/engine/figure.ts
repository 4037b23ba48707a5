import { type Grid, type GridError, highColumn, lowColumn, NOMINAL } from './grid.ts';
import type { Row } from './layout.ts';
import type { Network } from './network.ts';
import type { Contribution, Figure } from './results.ts';
import { MANY, type SourceEnds, standardFromEnds } from './row.ts';

/** Effect of one source alone on a row, SI; NaN where the row is an error with the source at that end. */
export interface Effect {
  source: number;
  low: number;
  high: number;
  /** Both ends of the source lie on one side of its nominal (50 k6): the nominal itself cannot come about. */
  apart?: true;
}

const number = (value: unknown): number => (typeof value === 'number' ? value : Number.NaN);

/** Nominal of a row as it stands on the grid: a number, a logical, an error, or undefined before it is computed. */
export const nominalOf = (grid: Grid, row: Row): number | boolean | GridError | undefined =>
  grid.value(row.slot, NOMINAL);

/** One-at-a-time effects of every source upstream. */
export function effectsOf(network: Network, grid: Grid, row: Row): Effect[] {
  const nominal = number(nominalOf(grid, row));
  const values = row.cases?.values;
  return network.sourcesInOrder(row).map((source, i) => {
    const at = row.ordered.at[i] as number;
    const low = (values?.[at] ?? Number.NaN) - nominal;
    const high = (values?.[at + 1] ?? Number.NaN) - nominal;
    return low * high > 0 && isApart(network, grid, source)
      ? { source, low, high, apart: true }
      : { source, low, high };
  });
}

const isApart = (network: Network, grid: Grid, source: number): boolean => {
  const row = network.sourceRow(source);
  if (!row) return false;
  const nominal = number(nominalOf(grid, row));
  const low = number(grid.value(row.slot, lowColumn(source))) - nominal;
  const high = number(grid.value(row.slot, highColumn(source))) - nominal;
  return low * high > 0;
};

const endsOf = (network: Network, source: number): SourceEnds => {
  const body = network.sourceRow(source)?.definition.body;
  if (body?.kind !== 'source') throw new Error(`no source row for slot ${source}`);
  return body.ends;
};

/** Degrees of freedom of a source as it stands. */
export const dofOf = (network: Network, grid: Grid, ends: SourceEnds): number => {
  if (ends.dofRow === undefined) return ends.dof;
  const row = network.rows.get(ends.dofRow);
  const value = row && nominalOf(grid, row);
  return typeof value === 'number' && value < MANY ? value : Number.POSITIVE_INFINITY;
};

/** Standard uncertainty that a source contributes by its effect on a row. */
export const standardOf = (ends: SourceEnds, effect: Effect): number =>
  standardFromEnds(effect.low, effect.high, ends.distribution, ends.k);

/**
 * Statistical figure and worst case of a row. `corner` gives the two corner values, where the row has more than one
 * source. Welch-Satterthwaite (JCGM 100 G.4) for the degrees of freedom.
 */
export function figureOf(
  network: Network,
  grid: Grid,
  row: Row,
  effects: readonly Effect[],
  corner: { low: number; high: number } | undefined,
): Figure | undefined {
  const value = nominalOf(grid, row);
  if (typeof value !== 'number') return undefined;
  let centre = value;
  let variance = 0;
  let fourth = 0;
  // Where a source cannot be at its nominal, neither that case nor one with another source alone at an end comes about.
  const apart = effects.some((effect) => effect.apart);
  let low = apart ? Number.POSITIVE_INFINITY : value;
  let high = apart ? Number.NEGATIVE_INFINITY : value;
  for (const effect of effects) {
    centre += (effect.low + effect.high) / 2;
    const ends = endsOf(network, effect.source);
    const u = standardOf(ends, effect);
    variance += u * u;
    const dof = dofOf(network, grid, ends);
    if (Number.isFinite(dof) && u > 0) fourth += u ** 4 / dof;
    if (apart && corner) continue;
    low = Math.min(low, value + effect.low, value + effect.high);
    high = Math.max(high, value + effect.low, value + effect.high);
  }
  if (corner) {
    low = Math.min(low, corner.low);
    high = Math.max(high, corner.high);
  }
  const dof =
    fourth > 0 && Number.isFinite(variance ** 2) ? variance ** 2 / fourth : Number.POSITIVE_INFINITY;
  return {
    value,
    low,
    high,
    centre,
    u: variance < Number.POSITIVE_INFINITY ? Math.sqrt(variance) : rootOfSum(network, effects),
    dof,
  };
}

/** Where squares are beyond computing, their root need not be. */
const rootOfSum = (network: Network, effects: readonly Effect[]): number =>
  Math.hypot(...effects.map((effect) => standardOf(endsOf(network, effect.source), effect)));

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
        dof: dofOf(network, grid, ends),
      };
    })
    .filter((one) => one.low !== 0 || one.high !== 0)
    .sort((a, b) => b.u - a.u || Math.abs(b.high - b.low) - Math.abs(a.high - a.low));
}
