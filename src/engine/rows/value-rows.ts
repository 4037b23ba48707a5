import { problem } from '../../../shared/problem.ts';
import { fieldWords } from '../../../shared/sheet/field-words.ts';
import type { Role } from '../../../shared/sheet/format.ts';
import type { Entry, Expr, Literal, Spread, ValueType } from '../../language/syntax/syntax.ts';
import { isShare } from '../../language/values/spread.ts';
import { unitOfSize } from '../../language/values/tolerance-unit.ts';
import { inputWords } from './bare-reading.ts';
import type { CellBuilder } from './builder.ts';
import { call, constant, eachRef, minus, plus, quoted, rowRef, times } from './expr.ts';
import { sheetFormula, spreadMisfit } from './formulas.ts';
import { partRow, type RowKey } from './key.ts';
import { oddSize, SHARE_OF_NOTHING } from './odd-size.ts';
import { proofOfLiteral } from './proof.ts';
import { type ReadingContext, readingRows } from './readings.ts';
import type { RowProof, SolvedIn, SourceEnds } from './row.ts';
import type { SheetScope } from './scope.ts';
import { numberOf } from './texts.ts';
import { unknownEnds } from './unknown-ends.ts';

/** Where a value comes from and what its spread means. */
export interface ValuePlace {
  key: RowKey;
  field: string;
  role: Role;
  quantity?: string | undefined;
  /** Unit the value is shown in, where it is not the sheet's. */
  display?: string | undefined;
  /** Text of the tolerance field, if the place has one. */
  tolerance?: string | undefined;
  /** Told when the text is blank. */
  blank: string;
  /** A size is wanted, which 20 under is not. */
  isSize?: boolean;
  /** What a number typed there is to proof; by its role and quantity where absent. */
  proof?: RowProof | undefined;
  /** The author of the line says that it follows by geometry. */
  isGeometry?: boolean;
  /** A formula is solved where it stands in a ring. */
  solved?: SolvedIn | undefined;
  readings?: Pick<ReadingContext, 'gauge' | 'at' | 'material' | 'reference' | 'gaugeInCell'>;
}

/** Gives a formula over row keys, or a problem: differs between a sheet's own entries and a library cell's defaults. */
export type FormulaReader = (
  expr: Expr,
) => { expr: Expr; type?: ValueType; proof?: RowProof } | ReturnType<typeof problem>;

/**
 * Rows of one entry: a number, a range, a value with its spread, readings, or a formula; chosen formulas are held.
 * Returns the key of the source that is its tolerance, where it has one.
 */
export function valueRows(
  build: CellBuilder,
  scope: SheetScope,
  text: string,
  place: ValuePlace,
  formula: FormulaReader = (expr) => sheetFormula(build, scope, expr, place.quantity, place.isGeometry),
): RowKey | undefined {
  const { entry, problems, echo } = scope.texts.entry(text, place.quantity, place.role, place.display);
  if (echo) build.cell.echoes[place.field] = echo;
  if (problems[0]) {
    build.problem(place.key, problems[0], place.field);
    for (const more of problems.slice(1)) build.cell.problems.push({ ...more, field: place.field });
    return undefined;
  }
  if (entry.kind === 'blank') {
    build.blank(place.key, place.blank);
    return undefined;
  }
  if (entry.kind === 'offset' && place.isSize) {
    const told = `${text.trim()} is how far from its size a part is cut, and the size itself is wanted here.`;
    build.problem(place.key, problem('range', told), place.field);
    return undefined;
  }
  const odd = oddSize(entry, place.quantity);
  if (odd) {
    build.problem(place.key, odd, place.field);
    return undefined;
  }
  if (place.role === 'measured' && entry.kind !== 'formula') {
    if (entry.kind === 'designation')
      build.cell.cautions.push(
        `\`${text.trim()}\` is what the part is called and no reading, so it proves nothing: type the size that the gauge showed.`,
      );
    readingRows(build, scope, place.key, entry, {
      ...place.readings,
      reference: place.readings?.reference ?? '20 degC',
      quantity: place.quantity,
      field: place.field,
      proof: entry.kind === 'designation' ? { is: 'planned' } : place.proof,
    });
    return undefined;
  }
  if (entry.kind === 'formula') return formulaRows(build, scope, entry, place, formula);
  if (entry.kind === 'range') {
    tellUncounted(build, place);
    const low = Math.min(entry.low.value, entry.high.value);
    const high = Math.max(entry.low.value, entry.high.value);
    const middle = (low + high) / 2;
    return build.source(
      place.key,
      middle,
      rectangular(build, low - middle, high - middle, place),
      place.proof ?? proofOfLiteral(entry.low, place),
    );
  }
  if (entry.kind === 'readings') {
    build.problem(
      place.key,
      problem(
        'syntax',
        'A list of readings belongs in a measured cell: change what the cell is, or give one value.',
      ),
      place.field,
    );
    return undefined;
  }
  const value = numberOf(entry) as number;
  const own = entry.kind === 'value' ? entry.spread : undefined;
  if (own) tellUncounted(build, place);
  const spread = own ?? toleranceOf(build, scope, place, value, unitOfSize(entry));
  const proof = place.proof ?? proofOfLiteral(literalOf(entry), place);
  if (!spread) {
    build.number(place.key, value, proof);
    return undefined;
  }
  if (spread === 'unreadable')
    return build.source(place.key, value, unknownEnds(build, unread(build)), proof);
  if (spread.percent && value === 0) {
    build.problem(place.key, problem('range', SHARE_OF_NOTHING), own ? place.field : 'tolerance');
    return undefined;
  }
  // 12 % with ± 1 % goes from 11 to 13 %, as it does when both stand in one entry.
  const ofShare = entry.kind === 'value' && isShare({ symbol: entry.value.unit ?? '' });
  const scale = spread.percent && !ofShare ? Math.abs(value) : 1;
  const { shift, low, high } = aboutInside(spread.low * scale, spread.high * scale);
  return build.source(place.key, value + shift, rectangular(build, low, high, place, spread), proof);
}

/**
 * Ends about a size that lies between them. Where both lie on one side of the nominal (50 p6), a part of the nominal size
 * is never made, and what depends on it would branch, or be looked up, as if it were: the middle stands in its place.
 */
function aboutInside(low: number, high: number): { shift: number; low: number; high: number } {
  if (!(low * high > 0)) return { shift: 0, low, high };
  const shift = (low + high) / 2;
  return { shift, low: low - shift, high: high - shift };
}

/** The size that an entry which is no list states. */
const literalOf = (entry: Entry): Literal | undefined =>
  entry.kind === 'fit' ? entry.nominal : 'value' in entry ? entry.value : undefined;

function formulaRows(
  build: CellBuilder,
  scope: SheetScope,
  entry: Extract<Entry, { kind: 'formula' }>,
  place: ValuePlace,
  formula: FormulaReader,
): RowKey | undefined {
  const read = formula(entry.expr);
  if ('message' in read) {
    build.problem(place.key, read, place.field);
    return undefined;
  }
  if (entry.spread) tellUncounted(build, place);
  if (place.role === 'measured' && !entry.spread) tellWorkedOut(build, entry.expr, place);
  const spread = entry.spread ?? toleranceOf(build, scope, place, undefined);
  const misfit = spread && spread !== 'unreadable' ? spreadMisfit(read.type, spread) : undefined;
  if (misfit) {
    build.problem(place.key, misfit, entry.spread ? place.field : 'tolerance');
    return undefined;
  }
  const held = place.role === 'chosen';
  // What is worked out where a reading is wanted is as certain as what it is worked out from.
  const isRead = place.role === 'measured' || place.proof?.is === 'measured';
  const own = isRead ? undefined : place.proof;
  // What is chosen, or given by the maker, is a plan however it is arrived at.
  const proof: RowProof | undefined =
    own ??
    (held || (place.role === 'given' && place.field === 'entry')
      ? { is: 'planned' }
      : isRead
        ? asRead(read.proof)
        : read.proof);
  const { solved } = place;
  if (!spread) {
    if (solved) build.solved(place.key, read.expr, held, solved, proof);
    else build.formula(place.key, read.expr, held, proof);
    return undefined;
  }
  // A doubt stated behind a calculation makes a reading of it: how it was calculated is how it was read.
  const inner = isRead ? undefined : proof;
  const inside = partRow(place.key, 'formula');
  const nominal = solved
    ? rowRef(build.solved(inside, read.expr, held, solved, held ? proof : inner))
    : held
      ? read.expr
      : rowRef(build.formula(inside, read.expr, false, inner));
  const { ends, shift } =
    spread === 'unreadable'
      ? { ends: unknownEnds(build, unread(build)), shift: 0 }
      : endsOver(build, nominal, spread, place);
  if (held) return build.source(place.key, shift === 0 ? nominal : plus(nominal, exprOf(shift)), ends, proof);
  // A doubt stated behind a calculation over what was read makes a reading of it.
  const spreadRow = isRead
    ? build.source(partRow(place.key, 'read'), shift, ends, { is: 'measured' })
    : build.source(partRow(place.key, 'cut'), shift, ends);
  build.formula(place.key, plus(nominal, rowRef(spreadRow)), false, inner?.is ? inner : undefined);
  return spreadRow;
}

/** A size written where a reading is wanted is one of what it was read with, such as a pin, if anything was read at all. */
const asRead = (proof: RowProof | undefined): RowProof => ({
  ...proof,
  spots: (proof?.spots ?? []).filter((one) => one.is !== 'planned'),
  ofReadings: true,
});

/** A calculation where a reading is wanted has no doubt of its own, and the gauge beside it counts for nothing. */
function tellWorkedOut(build: CellBuilder, expr: Expr, { key, readings }: ValuePlace): void {
  let isOverCells = false;
  eachRef(expr, () => {
    isOverCells = true;
  });
  const gauge = readings?.gauge?.trim();
  if (isOverCells && !gauge) return;
  const input = inputWords(key);
  build.cell.cautions.push(
    `${input ? `The reading "${input}"` : 'This'} is a calculation and no reading${gauge ? `, so the doubt of \`${gauge}\` is not counted` : ', so it proves nothing'}: type the readings, apart by ";", or write ± behind it.`,
  );
}

const isNothing = (expr: Expr): Expr => ({
  kind: 'compare',
  op: '=',
  left: expr,
  right: constant(0),
  from: 0,
  to: 0,
});

const exprOf = (shift: number | Expr): Expr => (typeof shift === 'number' ? constant(shift) : shift);

/**
 * Ends of a spread about a nominal that is a formula: a part of it, or the deviations of an ISO 286 class at its size. As
 * in {@link aboutInside}, `shift` is how far from the nominal they stand.
 */
function endsOver(
  build: CellBuilder,
  nominal: Expr,
  spread: Spread,
  place: ValuePlace,
): { ends: SourceEnds; shift: number | Expr } {
  const { shift, low, high } = aboutInside(spread.low, spread.high);
  const plain = rectangular(build, low, high, place, spread);
  if (spread.form === 'class' && spread.designation) {
    const of = (fn: string): Expr => call(fn, nominal, quoted(spread.designation as string));
    const middle = of('CLASS_MIDDLE');
    const ends = {
      ...plain,
      low: minus(of('CLASS_LOWER'), middle),
      high: minus(of('CLASS_UPPER'), middle),
    };
    return { ends, shift: middle };
  }
  if (!spread.percent) return { ends: plain, shift };
  const share = (of: number): Expr =>
    call('IF', isNothing(nominal), call('FAIL', quoted(SHARE_OF_NOTHING)), times(nominal, constant(of)));
  const ends = { ...plain, low: share(low), high: share(high) };
  return { ends, shift: shift === 0 ? 0 : times(nominal, constant(shift)) };
}

function rectangular(
  build: CellBuilder,
  low: number,
  high: number,
  place: ValuePlace,
  spread?: Spread,
): SourceEnds {
  const what =
    place.role === 'chosen'
      ? 'tolerance'
      : spread?.form === 'within' || spread === undefined
        ? 'limits given'
        : 'tolerance given';
  const field =
    place.field === 'entry' || place.field === 'issued'
      ? ''
      : ` ${fieldWords(place.field).replaceAll('_', ' ')}`;
  return {
    low,
    high,
    distribution: spread?.k ? 'normal' : 'rectangular',
    k: spread?.k ?? 2,
    dof: Number.POSITIVE_INFINITY,
    label: `${build.name}${field}: ${what}`,
  };
}

const unread = (build: CellBuilder): string => `the tolerance of \`${build.name}\` cannot be read`;

/** A size has one tolerance: that of its entry goes before the one beside it. */
function tellUncounted(build: CellBuilder, { tolerance }: ValuePlace): void {
  const text = tolerance?.trim();
  if (text)
    build.cell.cautions.push(
      `Two tolerances are given: that of the entry counts, and ${text} beside it does not. Take one of them away.`,
    );
}

/** A tolerance that cannot be read is not one of nothing. */
function toleranceOf(
  build: CellBuilder,
  scope: SheetScope,
  place: ValuePlace,
  nominal: number | undefined,
  sizeUnit?: string,
): Spread | 'unreadable' | undefined {
  const written = place.tolerance?.trim();
  if (!written) return undefined;
  const text = classText(build, scope, written);
  if (text === undefined) return 'unreadable';
  const { spread, designation, problems } = scope.texts.tolerance(text, place.quantity, nominal, sizeUnit);
  for (const one of problems) build.cell.problems.push({ ...one, field: 'tolerance' });
  if (spread) return spread;
  if (designation !== undefined && problems.length === 0)
    return { low: 0, high: 0, percent: false, form: 'class', designation };
  return 'unreadable';
}

/** What a tolerance reads as where it takes the class of another line; undefined where there is none to take. */
function classText(build: CellBuilder, scope: SheetScope, written: string): string | undefined {
  const record = scope.records.get(build.cell.id);
  const found = record && scope.choices.classOf(record);
  if (!found) return written;
  const name = scope.choices.nameTaken(written);
  if (name !== undefined) build.cell.mentions.add(name);
  const [from] = found.through;
  if (from) build.cell.feeds.add(from.id);
  if ('text' in found) {
    build.cell.echoes.tolerance = found.text;
    return found.text;
  }
  const told =
    'problem' in found
      ? found.problem
      : problem(
          'blank',
          `The tolerance of \`${build.name}\` waits: \`${scope.called(found.blank.record.id)}\` has no ${found.blank.input.label} yet.`,
        );
  build.cell.problems.push({ ...told, field: 'tolerance' });
  return undefined;
}
