import { isNone } from '../../../shared/dimension.ts';
import { problem } from '../../../shared/problem.ts';
import type { Entry, Expr, Literal, Spread } from '../../language/syntax/syntax.ts';
import { bareDoubt, type Doubt, tellBare } from './bare-reading.ts';
import type { CellBuilder } from './builder.ts';
import { call, constant, minus, plus, rowRef, times } from './expr.ts';
import { outputRow, partRow, type ReadingFigure, type RowKey } from './key.ts';
import { gaugeOf, type Lost, recordOf } from './record-of.ts';
import { MANY, type SourceEnds } from './row.ts';
import type { SheetScope } from './scope.ts';
import { readingFigures } from './statistics.ts';
import { unknownEnds } from './unknown-ends.ts';

/** What a set of readings was taken with and at. */
export interface ReadingContext {
  gauge?: string | undefined;
  at?: string | undefined;
  material?: string | undefined;
  quantity?: string | undefined;
  /** The cell counts the doubt of a gauge itself. */
  gaugeInCell?: boolean;
  field: string;
  /** Entry of the sheet's reference temperature. */
  reference: string;
}

/**
 * Rows of what was read: mean, least, greatest, out-of-round, taper. The gauge's error is a row of the gauge cell and
 * is added to each, so whatever is read with one gauge shares it; out-of-round and taper are differences, so they lose
 * it. Three sources of the set's own: of the mean (type A scatter and resolution), of a single reading, of a difference.
 */
export function readingRows(
  build: CellBuilder,
  scope: SheetScope,
  base: RowKey,
  entry: Entry,
  context: ReadingContext,
): void {
  const stations = stationsOf(entry);
  const figures = readingFigures(stations.map((station) => station.map((one) => one.value)));
  const spread = entry.kind === 'readings' || entry.kind === 'value' ? entry.spread : undefined;
  const used = gaugeOf(build, scope, context, stations);
  // Doubt written behind the reading is the whole of it: the gauge then counts for its temperature only.
  const isInput = context.field.startsWith('inputs.');
  const isStated = spread !== undefined && (isInput || !isNoDoubt(spread, stations));
  const gauge = isStated || used === 'lost' ? undefined : used;
  const isBare = !isStated && used === undefined && !context.gaugeInCell;
  if (isBare) tellBare(build, base, figures.n, isInput, spread !== undefined);
  const parts = isStated
    ? statedDoubt(build, base, spread, figures.mean)
    : gauge
      ? gaugeDoubt(build, base, gauge, figures.n, figures.deviation)
      : bareDoubt(build, base, stations, figures.n, figures.deviation, isBare);

  const corrected = correction(build, scope, base, used === 'lost' ? undefined : used, context);
  const lost = (used === 'lost' && !isStated) || corrected === 'lost';
  const unknown = lost
    ? build.source(
        partRow(base, 'unknown'),
        0,
        unknownEnds(build, `the gauge or the temperature of \`${build.name}\` is not settled`),
      )
    : undefined;
  const size = (key: RowKey, value: number, source: RowKey | undefined): void => {
    const raw = build.number(partRow(key, 'read'), value, 'read');
    let expr: Expr = rowRef(raw);
    if (gauge) expr = plus(expr, rowRef(outputRow(gauge, 'error')));
    if (source) expr = plus(expr, rowRef(source));
    if (unknown) expr = plus(expr, rowRef(unknown));
    build.formula(key, corrected && corrected !== 'lost' ? times(expr, corrected) : expr);
  };
  size(base, figures.mean, parts.mean);
  size(partRow(base, 'least'), figures.least, parts.single);
  size(partRow(base, 'greatest'), figures.greatest, parts.single);
  const difference = (name: ReadingFigure, value: number | undefined, missing: string): void => {
    const key = partRow(base, name);
    if (value === undefined) {
      build.blank(key, missing, true);
      return;
    }
    const raw = build.number(partRow(key, 'read'), value, 'read');
    build.formula(key, parts.difference ? plus(rowRef(raw), rowRef(parts.difference)) : rowRef(raw));
  };
  const one = 'needs two readings or more';
  difference('range', figures.n > 1 ? figures.range : undefined, `The range ${one}.`);
  difference(
    'out_of_round',
    stations.some((s) => s.length > 1) ? figures.outOfRound : undefined,
    `Out-of-round ${one} in different directions at one place.`,
  );
  difference('taper', figures.taper, 'Taper needs readings at two places or more: put `|` between them.');
}

function stationsOf(entry: Entry): Literal[][] {
  if (entry.kind === 'readings') return entry.stations;
  if (entry.kind === 'fit') return [[entry.nominal]];
  if (entry.kind === 'value' || entry.kind === 'designation' || entry.kind === 'offset')
    return [[entry.value]];
  if (entry.kind === 'range') return [[entry.low, entry.high]];
  return [];
}

/** ± 0 behind what is no count: no size is read without doubt, so none is stated. */
const isNoDoubt = (spread: Spread, stations: readonly Literal[][]): boolean =>
  spread.low === 0 && spread.high === 0 && !stations.flat().every(({ dimension }) => isNone(dimension));

/** Expanded uncertainty written behind the reading: `2.2500 in ± 0.0002 in (k=2)`. */
function statedDoubt(build: CellBuilder, base: RowKey, spread: Spread, value: number): Doubt {
  const scale = spread.percent ? Math.abs(value) : 1;
  const ends: SourceEnds = {
    low: spread.low * scale,
    high: spread.high * scale,
    distribution: 'normal',
    k: spread.k ?? 2,
    dof: Number.POSITIVE_INFINITY,
    label: `${build.name}: uncertainty as stated`,
  };
  const own = build.source(partRow(base, 'mean-doubt'), 0, ends);
  const difference = build.source(partRow(base, 'difference-doubt'), 0, {
    ...ends,
    low: (ends.low as number) * Math.SQRT2,
    high: (ends.high as number) * Math.SQRT2,
    label: `${build.name}: two readings as stated`,
  });
  return { mean: own, single: own, difference };
}

/** From the gauge: its resolution and repeatability, and the scatter of the set. The gauge's own error comes by its row. */
function gaugeDoubt(
  build: CellBuilder,
  base: RowKey,
  gauge: string,
  n: number,
  deviation: number | undefined,
): Doubt {
  const repeatability = rowRef(outputRow(gauge, 'repeatability'));
  const resolution = rowRef(outputRow(gauge, 'resolution'));
  const scatter = deviation === undefined ? repeatability : call('MAX', constant(deviation), repeatability);
  const square = (expr: Expr): Expr => times(expr, expr);
  const doubt = (variance: Expr, factor: number): Expr =>
    times(constant(factor), call('SQRT', plus(variance, times(constant(1 / 12), square(resolution)))));
  const ends = (expr: Expr, dof: number, what: string): SourceEnds => ({
    low: { kind: 'negate', of: expr, from: 0, to: 0 },
    high: expr,
    distribution: 'normal',
    k: 2,
    dof,
    label: `${build.name}: ${what}`,
  });
  const what = n > 1 ? `scatter of ${n} readings` : 'one reading';
  const mean = ends(doubt(times(constant(1 / n), square(scatter)), 2), Number.POSITIVE_INFINITY, what);
  if (deviation !== undefined) {
    const resolved = times(constant(1 / 12), square(resolution));
    mean.dofRow = meanDof(
      build,
      base,
      { variance: deviation ** 2 / n, n, deviation },
      repeatability,
      resolved,
    );
  }
  return {
    mean: build.source(partRow(base, 'mean-doubt'), 0, mean),
    single: build.source(
      partRow(base, 'single-doubt'),
      0,
      ends(doubt(square(repeatability), 2), Number.POSITIVE_INFINITY, 'a single reading'),
    ),
    difference: build.source(
      partRow(base, 'difference-doubt'),
      0,
      ends(
        doubt(square(repeatability), 2 * Math.SQRT2),
        Number.POSITIVE_INFINITY,
        'difference of two readings',
      ),
    ),
  };
}

/**
 * Row of the degrees of freedom of a mean (JCGM 100, G.4.1): the scatter has n - 1, the resolution any number. Where the
 * readings scatter less than the gauge is known to, its own figure stands, and that is not in doubt.
 */
function meanDof(
  build: CellBuilder,
  base: RowKey,
  scatter: { variance: number; n: number; deviation: number },
  repeatability: Expr,
  resolved: Expr,
): RowKey {
  const both = plus(constant(scatter.variance), resolved);
  const dof = times(constant((scatter.n - 1) / scatter.variance ** 2), times(both, both));
  const known: Expr = {
    kind: 'compare',
    op: '>',
    left: constant(scatter.deviation),
    right: repeatability,
    from: 0,
    to: 0,
  };
  const many = constant(MANY);
  return build.formula(
    partRow(partRow(base, 'mean-doubt'), 'freedom'),
    scatter.variance > 0 ? call('IF', known, dof, many) : many,
    true,
  );
}

/**
 * Factor that brings a reading to reference temperature: 1 - alpha (t - t0) of the part + alpha (t - t0) of the gauge
 * (first order, as in JCGM 100 H.1). Undefined where no part temperature is given, lost where what it needs is not to be had.
 */
/** The field beside the text of a reading: `measured.at` beside `measured.entry`. */
const beside = (field: string, name: 'at' | 'material'): string => field.replace(/entry$/, name);

function correction(
  build: CellBuilder,
  scope: SheetScope,
  base: RowKey,
  gauge: string | undefined,
  context: ReadingContext,
): Expr | Lost | undefined {
  const text = context.at?.trim();
  if (!text) return undefined;
  const field = beside(context.field, 'at');
  const material = recordOf(build, scope, context.material, 'material', beside(context.field, 'material'));
  const { entry, problems } = scope.texts.entry(text, 'temperature', 'measured');
  const reference = scope.texts.entry(context.reference, 'temperature', 'given').entry;
  if (problems[0] || entry.kind !== 'value' || reference.kind !== 'value') {
    build.cell.problems.push({
      ...(problems[0] ?? problem('syntax', 'A temperature is one value, such as 24 degC ± 1 K.')),
      field,
    });
    return 'lost';
  }
  if (material === 'lost') return material;
  if (!material) {
    build.cell.problems.push(
      problem(
        'blank',
        'The part was read away from reference temperature: name its material cell, so that the reading can be corrected.',
        { field: beside(context.field, 'material') },
      ),
    );
    return 'lost';
  }
  const key = partRow(base, 'temperature');
  const spread = entry.spread;
  const part = spread
    ? build.source(key, entry.value.value, {
        low: spread.low,
        high: spread.high,
        distribution: 'normal',
        k: spread.k ?? 2,
        dof: Number.POSITIVE_INFINITY,
        label: `${build.name}: temperature of the part`,
      })
    : build.number(key, entry.value.value);
  const zero = constant(reference.value.value);
  const grown = times(rowRef(outputRow(material, 'alpha')), minus(rowRef(part), zero));
  const one = minus(constant(1), grown);
  return gauge
    ? plus(
        one,
        times(rowRef(outputRow(gauge, 'alpha')), minus(rowRef(outputRow(gauge, 'temperature')), zero)),
      )
    : one;
}
