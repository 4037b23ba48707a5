import { expandedFactor } from '../../../shared/statistics/coverage.ts';
import type { Expr, Literal } from '../../language/syntax/syntax.ts';
import type { CellBuilder } from './builder.ts';
import { constant } from './expr.ts';
import { inputOf, partRow, type RowKey } from './key.ts';
import { lastFigure } from './last-figure.ts';
import { MANY, type SourceEnds } from './row.ts';
import type { ReadingFigures } from './statistics.ts';

/** Keys of the sources of a set of readings: of its mean, of a single reading, of a difference of two. */
export interface ReadDoubt {
  mean: RowKey;
  single: RowKey;
  difference: RowKey;
  /** Of a mean whose readings scatter more than their gauge. */
  own?: RowKey;
  /** Variance of one reading by its gauge alone, SI. */
  variance: Expr;
}

/** A library cell may hold several readings: its input says which is meant. Undefined for a line of the sheet. */
export const inputWords = (key: RowKey): string | undefined => inputOf(key)?.replaceAll('_', ' ');

/** What a reading with neither gauge nor uncertainty says of itself. */
export function tellBare(
  build: CellBuilder,
  base: RowKey,
  n: number,
  isInput: boolean,
  isZero: boolean,
): void {
  const input = inputWords(base);
  const missing = isZero ? 'No gauge and a ± of nothing' : 'No gauge and no ±';
  const counted = n > 1 ? 'the last figure written and the scatter are' : 'the last figure written is';
  build.cell.cautions.push(
    `${missing} is given${input ? ` for the reading "${input}"` : ''}: only ${counted} counted as doubt, which proves nothing. ${isInput ? 'Write' : 'Name its gauge, or write'} ± behind it.`,
  );
}

/**
 * Neither gauge nor uncertainty: the scatter, and half a step of the last figure written, which is the least it can be.
 * What the instrument adds (JCGM 100, 4.3: type B) is marked as not known where nothing else counts it.
 */
export function bareDoubt(
  build: CellBuilder,
  base: RowKey,
  stations: readonly Literal[][],
  { n, deviation }: ReadingFigures,
  partial: boolean,
  where: 'place' | 'direction' | undefined,
): ReadDoubt {
  const half = Math.max(...stations.flat().map(lastFigure)) / 2;
  const step = half / Math.sqrt(3);
  const ends = (u: number, dof: number, what: string): SourceEnds => ({
    low: -expandedFactor(dof) * u,
    high: expandedFactor(dof) * u,
    distribution: 'normal',
    k: expandedFactor(dof),
    dof,
    ...(partial ? { partial } : {}),
    ...(where ? { where } : {}),
    label: `${build.name}: ${what}`,
  });
  const single = build.source(partRow(base, 'single-doubt'), 0, {
    ...ends(step, Number.POSITIVE_INFINITY, 'last figure written'),
    low: -half,
    high: half,
    distribution: 'rectangular',
  });
  const difference = build.source(
    partRow(base, 'difference-doubt'),
    0,
    ends(step * Math.SQRT2, Number.POSITIVE_INFINITY, 'last figures of two readings'),
  );
  const variance = constant(step ** 2);
  if (deviation === undefined) return { mean: single, single, difference, variance };
  const scatter = deviation / Math.sqrt(n);
  // JCGM 100, G.4.1: the scatter has n - 1 degrees of freedom, the last figure any number.
  const dof = scatter > 0 ? ((n - 1) * (scatter ** 2 + step ** 2) ** 2) / scatter ** 4 : MANY;
  const mean = build.source(
    partRow(base, 'mean-doubt'),
    0,
    ends(Math.hypot(scatter, step), dof < MANY ? dof : Number.POSITIVE_INFINITY, `scatter of ${n} readings`),
  );
  return { mean, single, difference, variance };
}
