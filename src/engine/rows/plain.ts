import { kindsOf } from '../../../shared/quantities/quantities.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Reference } from '../../language/syntax/syntax.ts';
import type { AssembledCell, OutputPlan } from './assembled.ts';
import { CellBuilder } from './builder.ts';
import { minus, rowRef } from './expr.ts';
import { setAside } from './faulty-cell.ts';
import { atEnd, type End, unfollowed } from './fit-ends.ts';
import { cellRow, partRow, READING_FIGURES, type RowKey } from './key.ts';
import { type Limited, limitProblem } from './limit-entry.ts';
import { type LimitReader, limitRows } from './limits.ts';
import { unknownQuantity } from './passed-over.ts';
import { proofOfFormula } from './proof.ts';
import type { SheetScope } from './scope.ts';
import { solvedIn } from './solved-in.ts';
import { valueRows } from './value-rows.ts';

/** Rows of a given, measured, chosen or worked out cell. */
export function assemblePlain(record: CellRecord, scope: SheetScope, reference: string): AssembledCell {
  const build = new CellBuilder(record.id, scope.called(record.id));
  const unknown = unknownQuantity(record);
  if (unknown) return setAside(build, record, scope.library, unknown);
  const type = scope.typeOfPlain(record);
  const quantity =
    record.quantity ??
    ('message' in type || type.kind !== 'quantity' || !type.dimension
      ? undefined
      : kindsOf(type.dimension, type.point === true)[0]?.name);
  const isLength = quantity === 'length';
  // What was read off a part is no size to be cut: an issue left from another role does not stand before it.
  const issued = record.role !== 'measured' && record.issued?.trim() ? record.issued : undefined;
  const own = cellRow(record.id);
  const planKey = issued ? partRow(own, 'replanned') : own;
  const { entry } = scope.texts.entry(record.entry ?? '', record.quantity, record.role);
  const isOffset = entry.kind === 'offset';

  const tolerance = valueRows(build, scope, record.entry ?? '', {
    key: planKey,
    field: 'entry',
    role: record.role,
    quantity: record.quantity,
    display: record.display,
    tolerance: issued ? undefined : record.tolerance,
    blank: blankWords(record, build.name),
    proof: record.basis === 'equipment' ? { is: 'settled' } : undefined,
    isGeometry: record.basis === 'geometry',
    solved:
      record.solved && record.role !== 'measured' ? solvedIn(scope, quantity, record.display) : undefined,
    readings: { gauge: record.gauge, at: record.at, material: record.material, reference },
  });
  let cut = tolerance;
  if (issued) {
    cut = valueRows(build, scope, issued, {
      key: own,
      field: 'issued',
      role: 'chosen',
      quantity: record.quantity ?? quantity,
      display: record.display,
      tolerance: record.tolerance,
      blank: '',
      isSize: !isOffset,
    });
  }

  const output: OutputPlan = {
    name: 'value',
    planned: own,
    stands: issued ? 'issued' : 'planned',
    justMade: false,
    ...(quantity ? { quantity } : {}),
    ...(record.display ? { display: record.display } : {}),
    ...(issued ? { replanned: planKey } : {}),
    ...(cut && (issued || record.role === 'chosen') ? { tolerance: cut } : {}),
    ...(record.limits?.metalOn ? { metalOn: record.limits.metalOn } : {}),
  };
  const measured = scope.isMeasured(record, 'value') ? record.measured : undefined;
  if (measured) {
    const key = partRow(own, 'measured');
    valueRows(build, scope, measured.entry, {
      key,
      field: 'measured.entry',
      role: 'measured',
      quantity: record.quantity ?? quantity,
      display: record.display,
      blank: '',
      isSize: !isOffset,
      readings: {
        gauge: measured.gauge ?? record.gauge,
        at: measured.at,
        material: measured.material,
        reference,
      },
    });
    output.measured = key;
    if (cut) output.ownTolerance = cut;
    output.difference = build.formula(partRow(key, 'difference'), minus(rowRef(key), rowRef(own)));
    output.stands = 'measured';
    output.justMade = true;
  }

  const base = scope.standing(record, 'value');
  const readings =
    build.cell.rows.length > 1 ? READING_FIGURES.filter((name) => build.has(partRow(base, name))) : [];
  const ends = measured ? [] : fitRows(build, scope, record, base);
  const limits = record.limits
    ? limitRows(
        build,
        own,
        record.limits,
        'limits',
        // Of what has no form, repeated readings are one figure, known by their mean.
        (readings.length > 0 && isLength) || ends.length > 0
          ? { least: partRow(base, 'least'), greatest: partRow(base, 'greatest') }
          : { least: base, greatest: base },
        sheetLimit(build, scope, quantity, record.display, { name: record.name, entry }),
      )
    : undefined;
  if (limits) output.limits = limits;
  build.cell.outputs.push(output);
  for (const name of [...readings, ...ends]) {
    build.cell.outputs.push({
      name,
      label: name.replaceAll('_', '-'),
      [measured ? 'measured' : 'planned']: partRow(base, name),
      stands: measured ? 'measured' : 'planned',
      justMade: false,
      aside: true,
      ...(quantity ? { quantity } : {}),
      ...(record.display ? { display: record.display } : {}),
    } as OutputPlan);
  }
  return build.cell;
}

const isJudged = ({ limits }: CellRecord): boolean =>
  [limits?.lower, limits?.upper, limits?.wear].some((limit) => limit?.trim());

/** Where the forms of its parts cannot be followed through a formula, what it is judged by is said. */
function tellUnfollowed(build: CellBuilder, scope: SheetScope, record: CellRecord): void {
  const { entry } = scope.texts.entry(record.entry ?? '', record.quantity, record.role);
  if (entry.kind !== 'formula') return;
  const names = unfollowed(entry.expr, scope.endOf);
  if (names.length > 0)
    build.cell.cautions.push(
      `Judged by the mean of ${names.map((name) => `\`${name}\``).join(' and ')}: which way taper and out-of-round lead in this formula is not plain. Where they count, name \`${names[0]}.least\` or \`${names[0]}.greatest\` in it.`,
    );
}

/**
 * Rows of the least and the greatest of a figure worked out from parts whose form was read: a clearance is as small as it
 * gets where the bore is least and the journal greatest. Gives their names; none where no part has a form.
 */
function fitRows(build: CellBuilder, scope: SheetScope, record: CellRecord, base: RowKey): End[] {
  if (record.role === 'worked' && !scope.hasEnds(record) && isJudged(record))
    tellUnfollowed(build, scope, record);
  if (record.role !== 'worked' || !scope.hasEnds(record)) return [];
  const { entry } = scope.texts.entry(record.entry ?? '', record.quantity, record.role);
  if (entry.kind !== 'formula' || build.cell.problems.length > 0) return [];
  const typeOf = (ref: Reference): ReturnType<SheetScope['typeOf']> => scope.typeOf(ref);
  const proof = proofOfFormula(entry.expr, typeOf, scope.library.functions, record.basis === 'geometry');
  return (['least', 'greatest'] as const).filter((end) => {
    const formed = atEnd(entry.expr, end, scope.endOf);
    if (formed) build.formula(partRow(base, end), formed, false, proof);
    return formed !== undefined;
  });
}

/** Reads a limit in the scope of the sheet. */
export const sheetLimit =
  (
    build: CellBuilder,
    scope: SheetScope,
    quantity: string | undefined,
    display?: string,
    of?: Limited,
  ): LimitReader =>
  (text, key, field) => {
    const wrong = limitProblem(scope.texts.entry(text, quantity, 'given', display).entry, text, of);
    if (wrong) {
      build.problem(key, wrong, field);
      return key;
    }
    valueRows(build, scope, text, { key, field, role: 'given', quantity, display, blank: '' });
    return key;
  };

function blankWords(record: CellRecord, name: string): string {
  switch (record.role) {
    case 'measured':
      return `\`${name}\` has no reading yet.`;
    case 'chosen':
      return `\`${name}\` is not chosen yet.`;
    default:
      return `\`${name}\` is blank.`;
  }
}
