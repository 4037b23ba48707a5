import type { CellInput, CellKind, CellOutput } from '../../../cells/record/cell.ts';
import { problem } from '../../../shared/problem.ts';
import { formatQuantity } from '../../../shared/quantities/figures.ts';
import type { CellRecord, KeptValue, Limits } from '../../../shared/sheet/format.ts';
import type { Expr } from '../../language/syntax/syntax.ts';
import type { AssembledCell, OutputPlan } from './assembled.ts';
import { CellBuilder } from './builder.ts';
import { call, constant, eachRef, minus, plus, quoted, rowRef, times } from './expr.ts';
import { setAside } from './faulty-cell.ts';
import { InnerNames } from './inner-names.ts';
import { type InputPlan, readInputs } from './inputs.ts';
import { outputRow, partRow, READING_FIGURES, type RowKey, validityRow } from './key.ts';
import { notFetched } from './library.ts';
import { type LimitReader, limitRows } from './limits.ts';
import { newerEdition, unknownParts } from './passed-over.ts';
import { sheetLimit } from './plain.ts';
import type { RowProof } from './row.ts';
import type { SheetScope } from './scope.ts';
import { numberOf } from './texts.ts';
import { valueRows } from './value-rows.ts';

/** What a sheet tells a library cell besides its record. */
export interface Surroundings {
  /** Entry of the reference temperature. */
  reference: string;
  /** System of units the sheet is shown in. */
  system: 'in' | 'mm';
  /** Table values the sheet keeps, which take the place of the library's. */
  kept: readonly KeptValue[];
}

/** Rows of a cell of the library: its inputs, its outputs by their formulas, its limits and what must hold for it. */
export function assembleLibraryCell(
  record: CellRecord,
  scope: SheetScope,
  around: Surroundings,
): AssembledCell {
  const build = new CellBuilder(record.id, scope.called(record.id));
  const kind = record.kind === undefined ? undefined : scope.library.kinds.get(record.kind);
  if (!kind) {
    const away = record.kind !== undefined && scope.library.lacks?.(record.kind);
    build.cell.problems.push(
      problem(
        'unknown-key',
        away
          ? notFetched(record.kind as string)
          : `This library has no cell of the kind "${record.kind ?? ''}". The cell is kept as it is; it computes where the kind is known.`,
        {
          field: 'kind',
        },
      ),
    );
    return build.cell;
  }
  const newer = newerEdition(record, kind);
  if (newer) return setAside(build, record, scope.library, newer);
  if (record.edition !== undefined && record.edition !== kind.edition)
    build.cell.cautions.push(
      `Made with edition ${record.edition} of this cell; computed with edition ${kind.edition}.`,
    );
  // What an older edition had is told by that.
  else build.cell.problems.push(...unknownParts(record, kind));
  const inputs = readInputs(build, scope, record, kind, around.reference);
  const inner = new InnerNames(build, scope, record, kind, inputs);

  usualRanges(build, scope, kind, record, inputs);
  const guards = validityRows(build, kind, inner);
  for (const output of kind.outputs) outputRows(build, scope, record, kind, output, inner, guards, around);
  return build.cell;
}

/** Notes which inputs the user gave have a usual range. A default is the library's own and not questioned. */
function usualRanges(
  build: CellBuilder,
  scope: SheetScope,
  kind: CellKind,
  record: CellRecord,
  inputs: ReadonlyMap<string, InputPlan>,
): void {
  for (const input of kind.inputs) {
    const plan = inputs.get(input.name);
    if (!input.sensible || plan?.kind !== 'value' || !record.inputs?.[input.name]?.trim()) continue;
    const [low, high] = input.sensible.map((text) =>
      numberOf(scope.texts.entry(text, input.quantity, 'given').entry),
    );
    if (low === undefined || high === undefined) continue;
    build.cell.usual.push({
      key: plan.key,
      label: input.label,
      low,
      high,
      words: input.sensible.join(' to '),
    });
  }
}

/** Rows of what must hold. Gives the keys of those without which there is no result. */
function validityRows(build: CellBuilder, kind: CellKind, inner: InnerNames): RowKey[] {
  const guards: RowKey[] = [];
  kind.validity?.forEach((validity, i) => {
    const key = validityRow(build.cell.id, i);
    const holds = inner.formula(validity.holds);
    let onInputsOnly = true;
    eachRef(inner.raw(validity.holds), (ref) => {
      if (!inner.isInput(ref.name)) onInputsOnly = false;
    });
    if (validity.grade === 'error' && onInputsOnly) {
      build.formula(key, call('IF', holds, constant(1), call('FAIL', quoted(validity.otherwise))));
      guards.push(key);
    } else build.formula(key, holds);
    build.cell.validity.push({ key, grade: validity.grade, otherwise: validity.otherwise });
  });
  if (guards.length < 2) return guards;
  // One row that is 1 while all of them hold, so that an output asks a single one.
  const all = guards.map((guard): Expr => rowRef(guard)).reduce((left, right) => times(left, right));
  return [build.formula(validityRow(build.cell.id), all)];
}

/** An error while what must hold does not. */
const guarded = (expr: Expr, guards: readonly RowKey[]): Expr =>
  guards.reduce(
    (inside, guard) =>
      call(
        'IF',
        { kind: 'compare', op: '>', left: rowRef(guard), right: constant(0), from: 0, to: 0 },
        inside,
        constant(0),
      ),
    expr,
  );

function outputRows(
  build: CellBuilder,
  scope: SheetScope,
  record: CellRecord,
  kind: CellKind,
  output: CellOutput,
  inner: InnerNames,
  guards: readonly RowKey[],
  around: Surroundings,
): void {
  const key = outputRow(record.id, output.name);
  const settings = record.outputs?.[output.name];
  if (output.table) tableRows(build, scope, kind, output, key, inner, around.kept);
  else if (output.formula !== undefined) {
    const expr = guarded(inner.formula(output.formula), guards);
    const spread = output.spread;
    const proof = inner.proofOf(expr, output);
    if (!spread) build.formula(key, expr, output.held === true, proof);
    else {
      const low = inner.formula(spread.low);
      const high = inner.formula(spread.high);
      const own = build.source(partRow(key, 'spread'), 0, {
        low,
        high,
        distribution: spread.distribution,
        k: 2,
        dof: Number.POSITIVE_INFINITY,
        label: `${build.name}: ${spread.label}`,
      });
      build.formula(key, plus(expr, rowRef(own)), false, proof);
    }
  } else build.blank(key, `${kind.title} gives no ${output.label}.`);

  const plan: OutputPlan = {
    name: output.name,
    label: output.label,
    quantity: output.quantity,
    planned: key,
    stands: 'planned',
    justMade: false,
    ...((settings?.display ?? output.display?.[around.system])
      ? { display: settings?.display ?? output.display?.[around.system] }
      : {}),
    ...(output.face ? {} : { aside: true }),
  };
  if (scope.isMeasured(record, output.name) && settings?.measured) {
    const measured = settings.measured;
    const measuredKey = partRow(key, 'measured');
    const field = `outputs.${output.name}.measured.entry`;
    valueRows(build, scope, measured.entry, {
      key: measuredKey,
      field,
      role: 'measured',
      quantity: output.quantity,
      display: plan.display,
      blank: '',
      readings: {
        gauge: measured.gauge,
        at: measured.at,
        material: measured.material,
        reference: around.reference,
      },
    });
    plan.measured = measuredKey;
    plan.difference = build.formula(
      partRow(measuredKey, 'difference'),
      minus(rowRef(measuredKey), rowRef(key)),
    );
    plan.stands = 'measured';
    plan.justMade = true;
  }
  const base = scope.standing(record, output.name);
  const isForm =
    output.quantity === 'length' && READING_FIGURES.every((name) => build.has(partRow(base, name)));
  const judged = isForm
    ? { least: partRow(base, 'least'), greatest: partRow(base, 'greatest') }
    : { least: base, greatest: base };
  if (!plan.measured && output.formula !== undefined && !output.spread && output.quantity === 'length')
    for (const end of ['least', 'greatest'] as const) {
      const formed = inner.atEnd(output.formula, end);
      if (formed)
        judged[end] = build.formula(
          partRow(key, end),
          guarded(formed, guards),
          false,
          inner.proofOf(formed, output),
        );
    }
  const own = settings?.limits;
  const hasOwn = own && (own.lower?.trim() || own.upper?.trim() || own.wear?.trim());
  const limits = hasOwn
    ? limitRows(
        build,
        key,
        own,
        `outputs.${output.name}.limits`,
        judged,
        sheetLimit(build, scope, output.quantity, plan.display),
      )
    : output.limits
      ? limitRows(
          build,
          key,
          output.limits as Limits,
          `outputs.${output.name}.limits`,
          judged,
          innerLimit(build, inner),
        )
      : undefined;
  if (limits) {
    if (!limits.metalOn && output.limits?.metalOn) limits.metalOn = output.limits.metalOn;
    plan.limits = limits;
  }
  build.cell.outputs.push(plan);
}

/** A limit the kind brings: a formula over its inputs; a plain reference to a blank input is no limit. */
const innerLimit =
  (build: CellBuilder, inner: InnerNames): LimitReader =>
  (text, key) => {
    const raw = inner.raw(text.startsWith('=') ? text : `=${text}`);
    if (raw.kind === 'ref' && raw.output === undefined && inner.isBlank(raw.name)) return undefined;
    build.formula(key, inner.formula(text.startsWith('=') ? text : `=${text}`));
    return key;
  };

function tableRows(
  build: CellBuilder,
  scope: SheetScope,
  kind: CellKind,
  output: CellOutput,
  key: RowKey,
  inner: InnerNames,
  kept: readonly KeptValue[],
): void {
  const column = output.table as NonNullable<CellOutput['table']>;
  const choice = inner.input(column.choice);
  const input = kind.inputs.find((one) => one.name === column.choice) as CellInput;
  if (choice?.kind !== 'choice') {
    build.blank(key, `\`${build.name}\`: ${input.label} is not chosen yet.`, input.optional === true);
    return;
  }
  const table = scope.library.tables.get(input.choice as string);
  const row = table?.rows.find((one) => one.key === choice.text);
  const own = kept.find(
    (one) =>
      one.table === input.choice &&
      (one.key === choice.text || row?.formerKeys?.includes(one.key)) &&
      one.column === column.column,
  );
  const ours = row?.columns[column.column];
  const found = own ?? ours;
  if (!found) {
    build.blank(
      key,
      `\`${build.name}\`: the table gives no ${output.label} for ${row?.name ?? choice.text}. Enter your own.`,
      true,
    );
    return;
  }
  if (own && ours && (own.value !== ours.value || own.low !== ours.low || own.high !== ours.high)) {
    const unit = scope.texts.unitOf(output.quantity);
    const [theirs, here] = [own, ours].map(({ value, low, high }) => {
      const ends = [low, high].map((si) => formatQuantity(si, unit)).join(' to ');
      return low === high ? formatQuantity(value, unit) : `${formatQuantity(value, unit)}, ${ends}`;
    });
    build.cell.cautions.push(
      `${output.label}: computed with what the sheet brings along from its table, ${theirs}; the table here says ${here}.`,
    );
  }
  build.cell.tables.push({
    table: input.choice as string,
    key: choice.text,
    column: column.column,
    value: found.value,
    low: found.low,
    high: found.high,
  });
  const proof: RowProof = output.basis === 'geometry' ? { is: 'settled' } : { basis: 'model' };
  if (found.low === found.high) {
    build.number(key, found.value, proof);
    return;
  }
  build.source(
    key,
    found.value,
    {
      low: found.low - found.value,
      high: found.high - found.value,
      distribution: 'rectangular',
      k: 2,
      dof: Number.POSITIVE_INFINITY,
      label: `${build.name}: ${output.label} of ${row?.name ?? choice.text}`,
    },
    proof,
  );
}
