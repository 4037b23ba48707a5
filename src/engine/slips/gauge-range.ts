import type { GaugeUse } from '../../../cells/record/cell.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { findUnit, type Unit } from '../../../shared/units/units.ts';
import { choiceIn } from '../rows/choice-in.ts';
import { cellRow, inputRow, outputRow, partRow, type RowKey } from '../rows/key.ts';
import type { Slip } from '../rows/results.ts';
import type { SheetScope } from '../rows/scope.ts';
import type { Datum } from './datum.ts';
import { written } from './written.ts';

/** Sizes of one field that were read with a gauge. */
export interface Gauged {
  field: string;
  /** Row of what was read. */
  key: RowKey;
  /** Id of the gauge cell. */
  gauge: string;
  /** Rows of the least and the greatest, or of every size read. */
  sizes: readonly RowKey[];
  /** Row of what the gauge itself moved, where a size was counted from a setting in a cell of the library. */
  travel?: RowKey;
}

/** Measuring range of a gauge, m. */
interface GaugeRange {
  low: number;
  high: number;
  use: GaugeUse | undefined;
}

/** The sheet as far as ranges need it. */
interface Around {
  scope: SheetScope;
  nominal(key: RowKey): number | undefined;
  /** System of units the sheet is shown in. */
  system: 'in' | 'mm';
}

/** A gauge moves a little beyond the ends of its range, as a share of it (common practice, no source). */
const BEYOND = 0.02;

const gaugeNamed = (text: string | undefined, scope: SheetScope): string | undefined => {
  const found = text?.trim() ? scope.recordTaken(text, 'gauge') : undefined;
  return found && 'record' in found ? found.record.id : undefined;
};

/** Id of the gauge that a gauge cell is set in. */
export const setInOf = (record: CellRecord, scope: SheetScope): string | undefined =>
  record.kind === 'gauge' ? gaugeNamed(record.inputs?.set_in, scope) : undefined;

/** What of a cell was read with a gauge of the sheet. */
export function gaugedOf(record: CellRecord, scope: SheetScope): Gauged[] {
  const found: Gauged[] = [];
  const reading = (name: string | undefined, field: string, key: RowKey): void => {
    const gauge = gaugeNamed(name, scope);
    if (gauge !== undefined)
      found.push({ field, key, gauge, sizes: [partRow(key, 'least'), partRow(key, 'greatest')] });
  };
  const { id, role, measured } = record;
  if (role !== 'cell') {
    if (role === 'measured') reading(record.gauge, 'entry', cellRow(id));
    else if (scope.isMeasured(record, 'value'))
      reading(measured?.gauge ?? record.gauge, 'measured.entry', partRow(cellRow(id), 'measured'));
    return found;
  }
  for (const [name, output] of Object.entries(record.outputs ?? {}))
    if (scope.isMeasured(record, name))
      reading(
        output.measured?.gauge,
        `outputs.${name}.measured.entry`,
        partRow(outputRow(id, name), 'measured'),
      );
  const kind = record.kind === undefined ? undefined : scope.library.kinds.get(record.kind);
  const input = kind?.inputs.find(({ reads }) => reads !== undefined);
  const gauge = input && gaugeNamed(record.inputs?.[input.name], scope);
  if (!kind || !input?.reads || gauge === undefined) return found;
  const rowOf = (name: string): RowKey =>
    kind.outputs.some((one) => one.name === name) ? outputRow(id, name) : inputRow(id, name);
  const { sizes, travel } = input.reads;
  found.push({
    field: `inputs.${input.name}`,
    key: inputRow(id, input.name),
    gauge,
    sizes: sizes.map(rowOf),
    ...(travel ? { travel: rowOf(travel) } : {}),
  });
  return found;
}

/** The measuring range of a gauge: its own as entered, else the usual one of its kind. */
function rangeOf(record: CellRecord, { scope, nominal }: Around): GaugeRange | undefined {
  const table = scope.library.tables.get('gauges');
  const input = scope.library.kinds.get('gauge')?.inputs.find(({ choice }) => choice === 'gauges');
  const chosen = input && scope.choices.of(record, input);
  const row = table && chosen && 'text' in chosen ? choiceIn(table, chosen.text) : undefined;
  const own = (input: string): number | undefined => {
    const target = scope.outputOf(record, { output: input, from: 0, to: 0 });
    return 'message' in target ? undefined : nominal(target.key);
  };
  const low = own('measures_from') ?? row?.range?.[0];
  const high = own('measures_to') ?? row?.range?.[1];
  return low === undefined || high === undefined || low >= high ? undefined : { low, high, use: row?.use };
}

/** What the gauge of a reading itself measures, and its division; of one that travels no size is known. */
export function gaugeOfReading(of: Gauged, around: Around): { low?: number; high?: number; step?: number } {
  const record = around.scope.records.get(of.gauge);
  const range = record && rangeOf(record, around);
  const step = around.nominal(outputRow(of.gauge, 'resolution'));
  const slack = range ? BEYOND * (range.high - range.low) : 0;
  return {
    ...(range && range.use !== 'travels' ? { low: range.low - slack, high: range.high + slack } : {}),
    ...(step === undefined ? {} : { step }),
  };
}

const isBeyond = (size: number, { low, high }: GaugeRange): boolean => {
  const slack = BEYOND * (high - low);
  return Math.abs(size) < low - slack || Math.abs(size) > high + slack;
};

/**
 * Asks about a size that the gauge it was read with does not reach, or the one that gauge is compared with. Nothing is
 * asked of a gauge whose range is not known.
 */
export function gaugeQuestion(of: Gauged, datum: Datum | undefined, around: Around): Slip | undefined {
  // 20 under is no size of its own.
  if (datum?.offset) return undefined;
  const { scope, nominal } = around;
  const read = of.sizes.map(nominal).filter((size) => size !== undefined);
  const moved = of.travel === undefined ? undefined : nominal(of.travel);
  const seen = new Set<string>();
  let by = '';
  for (let id: string | undefined = of.gauge; id !== undefined && !seen.has(id); ) {
    seen.add(id);
    const record = scope.records.get(id);
    const range = record && rangeOf(record, around);
    if (!record || !range) return undefined;
    // An indicator moves over its range at whatever size it is set.
    const setting = datum?.set?.size.value ?? 0;
    const held =
      range.use !== 'travels' ? read : moved !== undefined ? [moved] : read.map((size) => size - setting);
    const size = held.find((one) => isBeyond(one, range));
    const name = `\`${scope.called(id)}\``;
    if (size !== undefined) return question(of.field, size, range, `${name}${by}`, datum, around.system);
    by ||= `, in which ${name} is set,`;
    id = range.use === 'compares' ? setInOf(record, scope) : undefined;
  }
  return undefined;
}

function question(
  field: string,
  size: number,
  { low, high }: GaugeRange,
  gauge: string,
  datum: Datum | undefined,
  system: 'in' | 'mm',
): Slip {
  const unit = findUnit(datum?.system ?? system) as Unit;
  const plain = (si: number): string =>
    `${Number((si / unit.factor).toFixed(unit.symbol === 'in' ? 4 : 3))} ${unit.symbol}`;
  const read = Math.abs(size);
  return {
    key: `gauge:${field}`,
    field,
    message: `${gauge} reaches from ${plain(low)} to ${plain(high)}, and ${datum ? written(read, datum) : plain(read)} lies beyond. Was it read with another gauge?`,
  };
}
