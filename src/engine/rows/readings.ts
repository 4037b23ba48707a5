import { dimension, isNone, sameDimension } from '../../../shared/dimension.ts';
import { problem } from '../../../shared/problem.ts';
import { expandedFactor } from '../../../shared/statistics/coverage.ts';
import { expectedGreatest } from '../../../shared/statistics/extremes.ts';
import type { Entry, Expr, Literal, Spread } from '../../language/syntax/syntax.ts';
import { bareDoubt, type ReadDoubt, tellBare } from './bare-reading.ts';
import type { CellBuilder } from './builder.ts';
import { call, constant, minus, plus, rowRef, times } from './expr.ts';
import { type Form, formOf, pooledScatter, type Scatter } from './form.ts';
import { outputRow, partRow, type ReadingFigure, type RowKey } from './key.ts';
import { lastFigure } from './last-figure.ts';
import { gaugeOf, type Lost, recordOf } from './record-of.ts';
import type { RowProof, SourceEnds } from './row.ts';
import type { SheetScope } from './scope.ts';
import { type ReadingFigures, readingFigures } from './statistics.ts';
import { unknownEnds } from './unknown-ends.ts';

const LENGTH = dimension(1);

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
  /** What a number typed there is, where it is none read off a part: the library's own. */
  proof?: RowProof | undefined;
}

/**
 * Rows of what was read: mean, least, greatest, out-of-round, taper. The gauge's error is a row of the gauge cell and
 * is added to each, so whatever is read with one gauge shares it; out-of-round and taper are differences, so they lose
 * it. Sources of the set's own: of the mean (type A scatter and resolution), of a single reading, of a difference, and for
 * what of the form was not read.
 */
export function readingRows(
  build: CellBuilder,
  scope: SheetScope,
  base: RowKey,
  entry: Entry,
  context: ReadingContext,
): void {
  const stations = stationsOf(entry);
  const proof: RowProof = context.proof ?? { is: 'measured' };
  const figures = readingFigures(stations.map((station) => station.map((one) => one.value)));
  const spread = entry.kind === 'readings' || entry.kind === 'value' ? entry.spread : undefined;
  const used = gaugeOf(build, scope, context, stations);
  // Doubt written behind the reading is the whole of it: the gauge then counts for its temperature only.
  const isInput = context.field.startsWith('inputs.');
  const isStated = spread !== undefined && (isInput || !isNoDoubt(spread, stations));
  const gauge = isStated || used === 'lost' ? undefined : used;
  const isBare = !isStated && used === undefined && !context.gaugeInCell;
  if (isBare) tellBare(build, base, figures.n, isInput, spread !== undefined);
  const isLength = stations.flat().every(({ dimension }) => sameDimension(dimension, LENGTH));
  // A size read along one line, or at one place, is known there: the rest of the part was not read.
  const where =
    isLength && !isInput && (figures.places < 2 || figures.directions < 2)
      ? figures.places < 2
        ? ('place' as const)
        : ('direction' as const)
      : undefined;
  const parts = isStated
    ? statedDoubt(build, base, spread, figures, where)
    : gauge
      ? gaugeDoubt(build, base, gauge, figures, where)
      : bareDoubt(build, base, stations, figures, isBare, where);
  const form =
    isLength && !isInput && figures.n > 1 ? formRows(build, base, figures, parts.variance) : undefined;

  const corrected = correction(build, scope, base, used === 'lost' ? undefined : used, context);
  const lost = (used === 'lost' && !isStated) || corrected === 'lost';
  const unknown = lost
    ? build.source(
        partRow(base, 'unknown'),
        0,
        unknownEnds(build, `the gauge or the temperature of \`${build.name}\` is not settled`),
      )
    : undefined;
  const size = (key: RowKey, value: number, source: RowKey | undefined, unread?: Expr): void => {
    const raw = build.number(partRow(key, 'read'), value, proof);
    let expr: Expr = rowRef(raw);
    if (gauge) expr = plus(expr, rowRef(outputRow(gauge, 'error')));
    if (source) expr = plus(expr, rowRef(source));
    if (unread) expr = plus(expr, unread);
    if (unknown) expr = plus(expr, rowRef(unknown));
    // Gauge, temperature and material bring a reading to what it is of: they make no plan of it.
    build.formula(key, corrected && corrected !== 'lost' ? times(expr, corrected) : expr, false, proof);
  };
  // At one place more scatter than the gauge's stands for the form too: by Student's t it is wide enough.
  const meanForm = figures.places > 1 ? form?.mean : undefined;
  size(
    base,
    figures.mean,
    parts.mean,
    sumOf(parts.own === undefined ? undefined : rowRef(parts.own), meanForm),
  );
  size(partRow(base, 'least'), figures.least, parts.single, form && minus(form.picked, form.beyond));
  size(partRow(base, 'greatest'), figures.greatest, parts.single, form && minus(form.beyond, form.picked));
  doubtRow(build, base, [parts.mean, parts.own, form && partRow(base, 'form-doubt')], gauge);
  const difference = (
    name: ReadingFigure,
    value: number | undefined,
    missing: string,
    unread?: Expr,
  ): void => {
    const key = partRow(base, name);
    if (value === undefined) {
      build.blank(key, missing, true);
      return;
    }
    let expr: Expr = rowRef(build.number(partRow(key, 'read'), value, proof));
    if (parts.difference) expr = plus(expr, rowRef(parts.difference));
    build.formula(key, unread ? plus(expr, unread) : expr, false, proof);
  };
  const one = 'needs two readings or more';
  difference('range', figures.n > 1 ? figures.range : undefined, `The range ${one}.`);
  difference(
    'out_of_round',
    stations.some((s) => s.length > 1) ? figures.outOfRound : undefined,
    `Out-of-round ${one} in different directions at one place.`,
    form?.outOfRound,
  );
  difference(
    'taper',
    figures.taper,
    'Taper needs readings at two places or more: put `|` between them.',
    form?.taper,
  );
}

/** What the mean is known to, at 95 %: asked for where two parts are to agree within what was read. */
function doubtRow(
  build: CellBuilder,
  base: RowKey,
  sources: readonly (RowKey | undefined)[],
  gauge: string | undefined,
): void {
  const each = sources.flatMap((one) => (one ? [build.reach(one)] : []));
  if (gauge) each.push(rowRef(outputRow(gauge, 'doubt')));
  const squares = each.map((one) => times(one, one)).reduce((sum, one) => plus(sum, one));
  build.formula(partRow(base, 'doubt'), call('SQRT', squares), false, { is: 'settled' });
}

const sumOf = (one: Expr | undefined, other: Expr | undefined): Expr | undefined =>
  one && other ? plus(one, other) : (one ?? other);

/**
 * What the form of the surface adds where it was not read: to the mean either way, to the extremes outwards, to taper and
 * out-of-round upwards. What was not read is one source: whatever it is, it is so of all of them.
 */
function formRows(
  build: CellBuilder,
  base: RowKey,
  figures: ReadingFigures,
  variance: Expr,
): Form & { picked: Expr } {
  const form = formOf(figures, variance);
  const reach = rowRef(build.formula(partRow(base, 'form'), form.mean));
  const what = `${figures.places === 1 ? 'one place' : `${figures.places} places`}, ${figures.directions === 1 ? 'one direction' : `${figures.directions} directions`}`;
  const ends: SourceEnds = {
    low: { kind: 'negate', of: reach, from: 0, to: 0 },
    high: reach,
    distribution: 'rectangular',
    k: 2,
    dof: Number.POSITIVE_INFINITY,
    label: `${build.name}: form, read at ${what}`,
  };
  const unread = rowRef(
    build.source(partRow(base, 'unread'), 0, {
      ...ends,
      low: 0,
      high: 1,
      label: `${build.name}: form beyond ${what} (${unseen(figures)})`,
    }),
  );
  const part = (name: 'beyond' | 'taper-beyond' | 'round-beyond', expr: Expr): Expr =>
    times(unread, rowRef(build.formula(partRow(base, name), expr)));
  const outermost = rowRef(
    build.formula(
      partRow(base, 'outermost'),
      times(constant(PICKED * expectedGreatest(figures.n)), call('SQRT', variance)),
    ),
  );
  const picked = build.source(partRow(base, 'picked'), 0, {
    ...ends,
    low: 0,
    high: outermost,
    label: `${build.name}: least and greatest picked from ${figures.n} readings that scatter`,
  });
  return {
    picked: rowRef(picked),
    mean: rowRef(build.source(partRow(base, 'form-doubt'), 0, ends)),
    beyond: part('beyond', form.beyond),
    taper: part('taper-beyond', form.taper),
    outOfRound: part('round-beyond', form.outOfRound),
  };
}

/**
 * By how much the greatest of so many readings may lie above the true greatest size, in what scatter alone lifts it by on
 * average. More than 1, so that most parts are covered; no more than this, since they differ by their form too (from
 * simulated surfaces).
 */
const PICKED = 1.4;

/** What a gauge of two points does not show of a section: no odd lobes, and by two directions no oval that lies between them. */
const unseen = ({ directions }: ReadingFigures): string =>
  directions < 3 ? 'an oval between them, odd lobes' : 'odd lobes';

function stationsOf(entry: Entry): Literal[][] {
  if (entry.kind === 'readings') return entry.stations;
  if (entry.kind === 'fit') return [[entry.nominal]];
  if (entry.kind === 'value' || entry.kind === 'designation' || entry.kind === 'offset')
    return [[entry.value]];
  if (entry.kind === 'range') return [[entry.low, entry.high]];
  return [];
}

/**
 * ± 0 behind what is no count, or less than a millionth of its last figure: no size is read without doubt, so none is
 * stated.
 */
const isNoDoubt = ({ low, high, percent }: Spread, stations: readonly Literal[][]): boolean => {
  const read = stations.flat();
  if (read.every(({ dimension }) => isNone(dimension))) return false;
  const isFelt = (one: Literal, end: number) =>
    Math.abs(percent ? one.value * end : end) > 1e-6 * lastFigure(one);
  return !read.some((one) => isFelt(one, low) || isFelt(one, high));
};

/**
 * Expanded uncertainty written behind the reading: `2.2500 in ± 0.0002 in (k=2)`. Behind a list it stands beside the
 * scatter of the list (Student's t), and the larger of the two governs its mean.
 */
function statedDoubt(
  build: CellBuilder,
  base: RowKey,
  spread: Spread,
  figures: ReadingFigures,
  where: 'place' | 'direction' | undefined,
): ReadDoubt {
  const scale = spread.percent ? Math.abs(figures.mean) : 1;
  const k = spread.k ?? 2;
  const ends: SourceEnds = {
    low: spread.low * scale,
    high: spread.high * scale,
    distribution: 'normal',
    k,
    dof: Number.POSITIVE_INFINITY,
    ...(where ? { where } : {}),
    label: `${build.name}: uncertainty as stated${figures.n > 1 ? `, beside ${figures.n} readings` : ''}`,
  };
  const stated = (spread.high - spread.low) * 0.5 * scale;
  const own = build.source(partRow(base, 'single-doubt'), 0, ends);
  const difference = build.source(partRow(base, 'difference-doubt'), 0, {
    ...ends,
    low: (ends.low as number) * Math.SQRT2,
    high: (ends.high as number) * Math.SQRT2,
    label: `${build.name}: two readings as stated`,
  });
  // Half of what is stated is taken to be scatter: the rest is the gauge's own error, which readings share.
  const doubt = { single: own, difference, variance: constant((stated / k / 2) ** 2) };
  const factor = expandedFactor(figures.n - 1);
  const scatter = figures.deviation === undefined ? 0 : (factor * figures.deviation) / Math.sqrt(figures.n);
  if (figures.n < 2 || scatter <= stated * (2 / k)) return { ...doubt, mean: own };
  build.cell.cautions.push(
    `The ${figures.n} readings scatter more than the ± behind them says: their mean is taken to be known as they scatter, not to the ± stated.`,
  );
  const mean = build.source(partRow(base, 'mean-doubt'), 0, {
    ...ends,
    low: -scatter,
    high: scatter,
    k: factor,
    dof: figures.n - 1,
    label: `${build.name}: scatter of ${figures.n} readings`,
  });
  return { ...doubt, mean };
}

/** From the gauge: its resolution and repeatability, and the scatter of the set. The gauge's own error comes by its row. */
function gaugeDoubt(
  build: CellBuilder,
  base: RowKey,
  gauge: string,
  figures: ReadingFigures,
  where: 'place' | 'direction' | undefined,
): ReadDoubt {
  const repeatability = rowRef(outputRow(gauge, 'repeatability'));
  const resolution = rowRef(outputRow(gauge, 'resolution'));
  const variance = times(repeatability, repeatability);
  const doubt = (factor: number): Expr =>
    times(
      constant(factor),
      call('SQRT', plus(variance, times(constant(1 / 12), times(resolution, resolution)))),
    );
  const ends = (expr: Expr, what: string): SourceEnds => ({
    low: { kind: 'negate', of: expr, from: 0, to: 0 },
    high: expr,
    distribution: 'normal',
    k: 2,
    dof: Number.POSITIVE_INFINITY,
    ...(where ? { where } : {}),
    label: `${build.name}: ${what}`,
  });
  const list = figures.n > 1 ? pooledScatter(figures, repeatability, resolution) : undefined;
  const scatter = (key: 'mean-doubt' | 'own-doubt', { reach, k, dof }: Scatter, what: string): RowKey =>
    build.source(partRow(base, key), 0, { ...ends(reach, `${what} of ${figures.n} readings`), k, dof });
  return {
    mean: list
      ? scatter('mean-doubt', list.pooled, 'scatter')
      : build.source(partRow(base, 'mean-doubt'), 0, ends(doubt(2), 'one reading')),
    ...(list?.own ? { own: scatter('own-doubt', list.own, 'own scatter') } : {}),
    single: build.source(partRow(base, 'single-doubt'), 0, ends(doubt(2), 'a single reading')),
    difference: build.source(
      partRow(base, 'difference-doubt'),
      0,
      ends(doubt(2 * Math.SQRT2), 'difference of two readings'),
    ),
    variance: list?.variance ?? variance,
  };
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
    : build.source(key, entry.value.value, {
        // Read to half its last figure at best: no thermometer is without doubt.
        low: -lastFigure(entry.value) / 2,
        high: lastFigure(entry.value) / 2,
        distribution: 'rectangular',
        k: 2,
        dof: Number.POSITIVE_INFINITY,
        label: `${build.name}: temperature of the part, last figure written`,
      });
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
